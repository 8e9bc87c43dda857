//! Files as people meet them: each trap rebuilt in a few lines, with what stands in it.

mod damaged;
mod epw;
mod limits;
mod pieces;
mod reading;
mod rebuilt;
mod services;
mod tables;
mod times;

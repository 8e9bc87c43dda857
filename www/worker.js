// Does long work away from the page.
import { load, run } from "./module.js";

await run(await load());

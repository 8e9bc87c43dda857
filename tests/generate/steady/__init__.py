"""Independent solver of steady routes: no line of it is shared with the engine it judges."""

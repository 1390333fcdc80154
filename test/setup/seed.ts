import fc from "fast-check";

// The same cases on every machine, so that a red run is a change's doing; a soak draws new ones.
if (process.env["SOAK"] === undefined) fc.configureGlobal({ seed: 20_261_125 });

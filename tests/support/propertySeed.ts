import fc from "fast-check";

/**
 * Where the made-up inputs of properties begin: the same everywhere, so that a run that passes here passes there.
 * `PROPERTY_SEED=$RANDOM npm test` goes looking elsewhere; what it finds becomes an example of its property.
 */
const SEED = 20260901;

fc.configureGlobal({ seed: Number(process.env.PROPERTY_SEED ?? SEED) });

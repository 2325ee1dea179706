import fc from 'fast-check'

/** A fixed seed, so that a failure on one machine is a failure on all; another seed is for hunting. */
fc.configureGlobal({seed: Number(process.env.PITFOLIO_SEED ?? 20_261_125)})

import fc from 'fast-check';

// The same cases on every run: a failure that comes and goes helps nobody. A new seed is a new search.
fc.configureGlobal({ seed: 20_261_125 });

/** What people write of energy logs in a word or two. Loads no package. */
export { type LogClaim, logClaimExamples, parseLogClaim } from '../energy/claims/logClaim.ts';
export { parseRating } from '../energy/claims/rating.ts';

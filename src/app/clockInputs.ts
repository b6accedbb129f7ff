/** What the clock's inputs may be, and how a rate is checked against the film. */
export { rateFromTimer } from '../clock/rateCheck';
export { RATE_RANGE } from '../shot/parse';

export { RATE_RANGE } from '../shot/parse';

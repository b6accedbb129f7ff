export { rateFromTimer } from '../clock/rateCheck';

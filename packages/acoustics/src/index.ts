export { solveResponse } from './response.ts';

import { setFlagsFromString } from 'node:v8';

/**
 * Tells the engine that this process is over in seconds: it stops weaving functions into one another, which takes it
 * longer than the woven code saves. A kitchen's packet takes a sixth less time so, and a job of hundreds of doors no
 * more than before.
 */
export function forShortWork(): void {
  setFlagsFromString('--no-turbo-inlining');
}

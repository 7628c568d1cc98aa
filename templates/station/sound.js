/** What each tone sounds like: hertz and seconds. A good answer rises, a bad one is low and comes twice. */
const TUNES = {
  go: [
    [880, 0.09],
    [1320, 0.13],
  ],
  ask: [
    [660, 0.12],
    [660, 0.12],
    [880, 0.12],
  ],
  stop: [
    [196, 0.22],
    [0, 0.06],
    [196, 0.3],
  ],
  note: [[520, 0.12]],
};

/** @type {AudioContext | undefined} */
let audio;

/** @param {keyof typeof TUNES} tone */
export function play(tone) {
  audio ??= new AudioContext();
  void audio.resume().catch(() => undefined);
  let at = audio.currentTime;
  for (const [hertz = 0, seconds = 0] of TUNES[tone]) {
    if (hertz > 0) beep(audio, hertz, at, seconds);
    at += seconds;
  }
}

/** @param {AudioContext} context @param {number} hertz @param {number} at @param {number} seconds */
function beep(context, hertz, at, seconds) {
  const oscillator = context.createOscillator();
  const volume = context.createGain();
  oscillator.type = 'triangle';
  oscillator.frequency.value = hertz;
  volume.gain.setValueAtTime(0.0001, at);
  volume.gain.exponentialRampToValueAtTime(0.5, at + 0.01);
  volume.gain.exponentialRampToValueAtTime(0.0001, at + seconds);
  oscillator.connect(volume).connect(context.destination);
  oscillator.start(at);
  oscillator.stop(at + seconds);
}

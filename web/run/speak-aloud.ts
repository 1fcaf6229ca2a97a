/** Voice, sound and shake, through what the browser has; each may be missing. */

export function sayAloud(text: string): void {
  if (typeof speechSynthesis === 'undefined') return;
  const spoken = new SpeechSynthesisUtterance(text);
  spoken.lang = 'en';
  speechSynthesis.speak(spoken);
}

export function hushVoice(): void {
  if (typeof speechSynthesis !== 'undefined') speechSynthesis.cancel();
}

let audio: AudioContext | null = null;

/** Browsers let a page sound only after it was touched: to be called from a press of a button. */
export function readySound(): void {
  if (typeof AudioContext === 'undefined') return;
  audio ??= new AudioContext();
  if (audio.state === 'suspended') void audio.resume();
}

/** Three short tones. */
export function beep(): void {
  if (audio === null || audio.state !== 'running') return;
  const from_s = audio.currentTime + 0.02;
  for (const i of [0, 1, 2]) {
    const tone = audio.createOscillator();
    const loudness = audio.createGain();
    tone.frequency.value = 880;
    loudness.gain.setValueAtTime(0.0001, from_s + i * 0.25);
    loudness.gain.exponentialRampToValueAtTime(0.4, from_s + i * 0.25 + 0.02);
    loudness.gain.exponentialRampToValueAtTime(0.0001, from_s + i * 0.25 + 0.18);
    tone.connect(loudness).connect(audio.destination);
    tone.start(from_s + i * 0.25);
    tone.stop(from_s + i * 0.25 + 0.2);
  }
}

export function shake(): void {
  if (typeof navigator.vibrate === 'function') navigator.vibrate([200, 100, 200, 100, 200]);
}

/** A sound and a shake with every verdict, so that eyes may stay on the work. Never instead of words. */

type Tone = { readonly hz: number; readonly atMs: number; readonly forMs: number };
const TONES = {
  accepted: [
    { hz: 660, atMs: 0, forMs: 90 },
    { hz: 990, atMs: 100, forMs: 140 },
  ],
  refused: [
    { hz: 220, atMs: 0, forMs: 220 },
    { hz: 165, atMs: 260, forMs: 320 },
  ],
  heard: [{ hz: 880, atMs: 0, forMs: 50 }],
} as const satisfies Record<string, readonly Tone[]>;
const SHAKES = { accepted: [60], refused: [180, 90, 180], heard: [20] } as const;

export type Signal = keyof typeof TONES;

let audio: AudioContext | null = null;

const play = (context: AudioContext, { hz, atMs, forMs }: Tone): void => {
  const oscillator = context.createOscillator();
  const gain = context.createGain();
  const start = context.currentTime + atMs / 1000;
  oscillator.type = 'square';
  oscillator.frequency.value = hz;
  gain.gain.setValueAtTime(0.08, start);
  gain.gain.exponentialRampToValueAtTime(0.001, start + forMs / 1000);
  oscillator.connect(gain).connect(context.destination);
  oscillator.start(start);
  oscillator.stop(start + forMs / 1000);
};

export const signal = (kind: Signal, sound: boolean): void => {
  if ('vibrate' in navigator) navigator.vibrate([...SHAKES[kind]]);
  if (!sound || !('AudioContext' in window)) return;
  audio ??= new AudioContext();
  const context = audio;
  TONES[kind].forEach((tone) => play(context, tone));
};

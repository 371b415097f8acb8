import type { Source, Words } from '@libs/judge';
import { NOTHING, same, say } from './say';

/** What a rulebook writes where the design is all there is to name. */
const PLAIN = ['design', 'approved design'];

/** On whose authority, in words; nothing where a thing is its own authority. */
export const sourceSays = ({ kind, reference }: Source): Words => {
  if (reference === '') return NOTHING;
  switch (kind) {
    case 'practice':
      return say('source.practice');
    case 'memory':
      return say('source.memory', { reference });
    case 'design':
      return designSays(reference);
    case 'derived':
      return say('source.derived', { reference });
    case 'published':
      return same(reference);
  }
};

const designSays = (reference: string): Words => {
  const revision = /^revision (\d+)$/.exec(reference)?.[1];
  if (revision !== undefined) return say('source.revision', { revision });

  return PLAIN.includes(reference) ? say('source.design') : say('source.design-of', { reference });
};

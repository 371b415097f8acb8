import type { Source, Words } from '@libs/judge';
import { NOTHING, same, say } from './say';

/** On whose authority, in words; nothing where a thing is its own authority. */
export const sourceSays = ({ kind, reference }: Source): Words => {
  if (reference === '') return NOTHING;
  switch (kind) {
    case 'practice':
      return say('source.practice');
    case 'memory':
      return say('source.memory', { reference });
    case 'design':
      return reference === 'approved design' ? say('source.design') : say('source.design-of', { reference });
    case 'derived':
      return say('source.derived', { reference });
    case 'published':
      return same(reference);
  }
};

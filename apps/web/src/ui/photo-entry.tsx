import { lazy, Suspense } from 'react';
import type { ReactNode } from 'react';
import type { PhotoEntryProps } from './photo-taking';
import { photosModule } from './use-waiting-photos';

const Taking = lazy(async () => ({ default: (await photosModule()).PhotoTaking }));

/**
 * Takes or chooses photos and brings them to the plant at once; the entry then names them by their hash. `needed` only
 * says so: work without its photo is recorded all the same, and has a finding.
 */
export const PhotoEntry = (props: PhotoEntryProps): ReactNode => (
  <Suspense fallback={<div className="field" aria-busy="true" />}>
    <Taking {...props} />
  </Suspense>
);

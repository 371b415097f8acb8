import { useState } from 'react';
import type { ReactNode } from 'react';
import type { LinkPart } from '../../router/places';
import { BuildBook } from './build-book';
import { SiteWork } from './site-work';
import './link.css';

/** Of `/link/…#token`; read once, so that it is there after the address has lost it. */
const tokenHere = (): string => window.location.hash.slice(1);

/** One home, for whoever holds a link to it. */
export const LinkScreen = ({ part }: { readonly part: LinkPart }): ReactNode => {
  const [token] = useState(tokenHere);
  return (
    <main className="page link" id="main">
      {part === 'build-book' ? <BuildBook token={token} /> : <SiteWork token={token} />}
    </main>
  );
};

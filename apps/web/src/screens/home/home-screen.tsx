import type { ReactNode } from 'react';
import { useWedge } from '../../scan/wedge';
import { goTo } from '../../router/router';
import { places } from '../../router/places';
import { FindHome } from './find-home';
import { HomeHistory } from './home-history';
import './home.css';

/** Find a home, and read how it was built. A scan opens the scanned one. */
export const HomeScreen = ({ serial }: { readonly serial: string | null }): ReactNode => {
  useWedge((text) => goTo(places.home(text)));
  return (
    <main className="page" id="main">
      {serial === null ? <FindHome /> : <HomeHistory key={serial} serial={serial} />}
    </main>
  );
};

import type { ReactNode } from 'react';
export const LineScreen = (_: { serial?: string | null }): ReactNode => <main id="main" />;

import type { ReactNode } from 'react';
export const HomeScreen = (_: { serial?: string | null }): ReactNode => <main id="main" />;

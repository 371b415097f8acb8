import type { ReactNode } from 'react';
export const QualityScreen = (_: { serial?: string | null }): ReactNode => <main id="main" />;

export * from './passages/passages';
export * from './passages/unit-passages';
export * from './section-card/section-card';
export * from './unit-event';
export * from './view';
export * from './views';

export * from './passages/passages';
export * from './passages/passages.view';
export * from './passages/unit-passages';
export * from './section-card/section-card';
export * from './section-card/section-card.view';
export * from './unit-event';
export * from './view';
export * from './views';

export { byHandFile } from './by-hand';
export { csvOf } from './csv/table';
export * from './csv/tables';
export { epcisDocument, epcisFile } from './epcis/epcis';
export * from './packet-home';
export { reportFile } from './report/report';
export type { ReportWish } from './report/report';
export { xesFile } from './xes/xes';

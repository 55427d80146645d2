export { energyText } from './energy-text.ts';
export { layoutText } from './layout-text.ts';
export { monthsBetween, type BillingMonths } from './months-between.ts';
export { readingsDocumentText } from './readings-document-text.ts';
export { toReadingRows } from './to-reading-rows.ts';

export { accountSchema, type AccountDocument } from './account-document.ts';
export { ACCURACY_CLASSES } from './account-document.ts';
export { editRow, rowText, undoEdit, withoutEdits, type RowEdit } from './edit-row.ts';
export { estimateByMean, readingByDays, type DailyMean, type KnownReadings } from './estimate-reading.ts';
export { spanBefore, spanOn, type MeterSpan } from './meter-spans.ts';
export { checkAccount, readAccount, type Account } from './account.ts';
export { registersOf } from './check-pair.ts';
export { readTypedDay, type TypedDay } from './day-text.ts';
export { READING_FINDINGS, readingFinding, type ReadingFindingCode } from './findings.ts';
export { readNumberText, type NumberText } from './number-text.ts';
export { plainAccount, type PlainAccount } from './plain-account.ts';
export {
  readReadings,
  readReadingsDocument,
  readingsSchema,
  type ReadingsDocument,
  type ReadReadingsOptions,
} from './read-readings.ts';
export {
  confirmationKey,
  EDIT_METHODS,
  isUsualBill,
  shownBy,
  type Reading,
  type ReadingEdit,
  type ReadingPair,
  type ReadingRow,
  type Stretch,
} from './reading.ts';
export { readingText, readRegisterText, type RegisterContext, type RegisterText } from './register-text.ts';
export {
  makeRegister,
  READING_PLACES,
  type AccuracyClass,
  type Register,
  type RegisterId,
} from './register.ts';

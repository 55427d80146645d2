export { decodePieces, type PieceDecoder } from './decode-pieces.ts';
export { METER_FILE_KINDS, meterFileKind, type MeterFileKind, type ToldKind } from './kind.ts';
export { openMeterFile, type OpenOptions, type StreamedKind } from './open-meter-file.ts';
export {
  LARGEST_METER_FILE,
  readMeterFile,
  type ReadMeterFile,
  type ReadOptions,
} from './read-meter-file.ts';

import type { FlyerDocument } from '@unitbook/engine';
import type { FlyerKey } from './flyer-fields.ts';
import type { FlyerFile } from './flyer-file.ts';
import type { FlyerView } from './flyer-view.ts';

/** What every part of the flyer is drawn from, and what it can ask for. */
export interface FlyerDesk {
  /** As typed. */
  readonly flyer: FlyerDocument;
  readonly view: FlyerView;
  readonly type: (key: FlyerKey, text: string) => void;
  /** Go on from the input of a line. */
  readonly focusLine: (key: FlyerKey) => void;
  readonly openFile: (file: File) => Promise<void>;
  readonly refused: { readonly name: string; readonly file: FlyerFile } | null;
  readonly saveFile: () => void;
  readonly saveCsv: () => void;
  readonly takeOut: () => void;
  /** What another flyer took the place of, in a sentence; '' for nothing. */
  readonly before: string;
  readonly putBack: () => void;
}

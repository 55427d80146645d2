import type { XmlElement } from './elements.ts';
import type { Entry, EntryEvents } from './entry.ts';
import { keepField, type Fields } from './fields.ts';
import { LOCAL_TIME_FIELDS } from './local-time-fields.ts';
import { TYPE_FIELDS } from './reading-type.ts';

const TYPE_NAMES: ReadonlySet<string> = new Set(TYPE_FIELDS);
const LOCAL_TIME_NAMES: ReadonlySet<string> = new Set(LOCAL_TIME_FIELDS);

/** Read what entries say of meters and of local time; all that is not readings. */
export function headerContents(
  entry: () => Entry,
  localTime: EntryEvents['localTime'],
): {
  readonly open: (element: XmlElement) => void;
  readonly close: (element: XmlElement, text: string) => void;
} {
  let type: Fields = new Map();
  let local: Fields = new Map();
  return {
    open: ({ name }) => {
      if (name === 'ReadingType') type = new Map();
      else if (name === 'LocalTimeParameters') local = new Map();
    },
    close: (element, text) => {
      const { name, parent, at } = element;
      if (parent?.name === 'ReadingType' && TYPE_NAMES.has(name)) keepField(type, element, text);
      else if (parent?.name === 'LocalTimeParameters' && LOCAL_TIME_NAMES.has(name))
        keepField(local, element, text);
      else if (name === 'UsagePoint') entry().hasUsagePoint = true;
      else if (name === 'MeterReading') entry().hasMeterReading = true;
      else if (name === 'ReadingType') entry().type ??= { at, fields: type };
      else if (name === 'LocalTimeParameters') localTime(at, local);
    },
  };
}

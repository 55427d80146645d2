import { html, nothing, type TemplateResult } from 'lit';
import { renderFold, type Folds } from '../render/fold.ts';
import { renderPlainSelect } from '../render/select.ts';
import { countedAs, pointsOf, streamsOf, type CountAs } from './assign.ts';
import type { StreamContents } from './contents.ts';
import { offsetWords } from './moments.ts';
import type { Panel, ReadFile } from './panel.ts';
import { renderHeading, renderSentences, renderWide } from './parts.ts';
import type { Choices, Session } from './session.ts';
import { listed, QUANTITY_WORDS } from './words.ts';
import { streamText, type Stream } from '@unitbook/meter-files';

/** What a register is called in a table: by its own name, and by its connection where there are several. */
function shortName({ register, point }: Stream, hasPoints: boolean): string {
  return hasPoints && point !== '' ? `${register} of ${point}` : register;
}

function renderName({ words, stream }: StreamContents, hasPoints: boolean): TemplateResult {
  return html`<th scope="row">${words}<span class="hint">${shortName(stream, hasPoints)}</span></th>`;
}

/** Registers that were read once each. */
function renderShown(contents: readonly StreamContents[], hasPoints: boolean): TemplateResult {
  return html`<table>
    <thead>
      <tr>
        <th scope="col">Register</th>
        <th scope="col" class="said">It showed</th>
      </tr>
    </thead>
    <tbody>
      ${contents.map(
        (line) =>
          html`<tr>
            ${renderName(line, hasPoints)}
            <td class="said">${line.first}</td>
          </tr>`,
      )}
    </tbody>
  </table>`;
}

/** Registers from a first moment to a last. */
function renderSpans(contents: readonly StreamContents[], hasPoints: boolean): TemplateResult {
  return html`<table>
    <thead>
      <tr>
        <th scope="col">Register</th>
        <th scope="col" class="said">From</th>
        <th scope="col" class="said">To</th>
        <th scope="col">Counted</th>
      </tr>
    </thead>
    <tbody>
      ${contents.map(
        (line) =>
          html`<tr>
            ${renderName(line, hasPoints)}
            <td class="said">${line.first}</td>
            <td class="said">${line.last === '' ? 'one reading' : line.last}</td>
            <td class="amount-cell">${line.amount === '' ? '–' : `${line.amount} ${line.unit}`}</td>
          </tr>`,
      )}
    </tbody>
  </table>`;
}

/** More registers than these are counted, not named. */
const MOST_NAMED = 3;

/** What is to be said of the values of registers: once of all of which the same is to be said. */
function noteSentences(contents: readonly StreamContents[]): readonly string[] {
  const alike = new Map<string, string[]>();
  for (const { name, notes } of contents) {
    const words = notes.join(', ');
    alike.set(words, [...(alike.get(words) ?? []), name]);
  }
  return [...alike].map(([words, names]) => {
    const isAll = names.length === contents.length && names.length > 1;
    const some = names.length > MOST_NAMED ? `${String(names.length)} registers` : listed(names);
    return `${isAll ? 'Each register' : some}: ${words}.`;
  });
}

/** What of the clock of a file has to be known to read its times. */
function clockText({ file }: Session): string {
  if (file === null || file.intervals.length === 0) return '';
  const { offset } = file.clock;
  return offset === null
    ? 'Times of intervals are local, as they stand in the file.'
    : `Times of intervals are by ${offsetWords(offset)} all year, as the file has them.`;
}

/** What is in a file, register by register. */
export function renderContents({ contents, session }: ReadFile): TemplateResult | typeof nothing {
  if (contents.length === 0) return nothing;
  const hasPoints = session.file !== null && pointsOf(session.file).length > 1;
  const areSingle = contents.every(({ last }) => last === '');
  const table = areSingle ? renderShown(contents, hasPoints) : renderSpans(contents, hasPoints);
  const clock = clockText(session);
  return html`
    ${renderHeading('What is in it')} ${clock === '' ? nothing : html`<p class="say">${clock}</p>`}
    ${renderWide('Registers of the file', table)} ${renderSentences(noteSentences(contents))}
  `;
}

const COUNT_WORDS: readonly (readonly [CountAs, string])[] = [
  ['import', QUANTITY_WORDS.import],
  ['export', QUANTITY_WORDS.export],
  ['generation', QUANTITY_WORDS.generation],
  ['nothing', 'left out'],
];

const NONE = '';

function renderPoint({ file, choices }: Session, panel: Panel): TemplateResult | typeof nothing {
  const points = file === null ? [] : pointsOf(file);
  if (points.length < 2) return nothing;
  return renderPlainSelect({
    id: 'meter-point',
    label: 'Which connection is yours?',
    hint: `the file has ${String(points.length)}`,
    value: choices.point ?? NONE,
    options: [
      [NONE, 'Choose …'],
      ...points.map((point) => [point, point === '' ? 'without a name' : point] as const),
    ],
    choose: (point) => {
      panel.choose({ point: point === NONE ? null : point });
    },
  });
}

/** More registers than these are not asked about one by one. */
const MOST_ASKED = 40;

/** Which registers are counted, and as what, where their own words do not say it right. */
export function renderCounting(session: Session, panel: Panel): TemplateResult | typeof nothing {
  const { file, choices } = session;
  if (file === null) return nothing;
  const streams = streamsOf(file).filter(({ point }) => choices.point === null || point === choices.point);
  const count = (at: number, as: string): Pick<Choices, 'counts'> => {
    const counts = new Map(choices.counts);
    const stream = streams[at];
    if (stream !== undefined) counts.set(stream, as as CountAs);
    return { counts };
  };
  const folds: Folds = panel;
  return html`
    ${renderPoint(session, panel)}
    ${
      streams.length > MOST_ASKED
        ? nothing
        : renderFold(
            {
              key: 'counting',
              className: 'help',
              isOpen: streams.some(({ quantity }) => quantity === 'net'),
              summary: 'Count a register otherwise',
              content: () =>
                streams.map((stream, at) =>
                  renderPlainSelect({
                    id: `count-${String(at)}`,
                    label: `${streamText(stream)}${stream.rate === null ? '' : `, rate ${stream.rate}`}`,
                    value: countedAs(stream, choices),
                    options: COUNT_WORDS,
                    choose: (as) => {
                      panel.choose(count(at, as));
                    },
                  }),
                ),
            },
            folds,
          )
    }
  `;
}

import type { Finding } from './quantity/index.ts';
import type { Tariff, TariffDocument } from './tariff/index.ts';
import { INTERVAL_CHANNELS, type IntervalChannel, type NettingWindow } from './energy/index.ts';
import { quoteFinding } from './quote/index.ts';

const isChannel = (name: string): name is IntervalChannel =>
  INTERVAL_CHANNELS.some((channel) => channel === name);

/**
 * The measures of a tariff that are netted inside windows of time: only intervals tell them.
 *
 * @example
 * nettingWindows({ measures: { net: { label: 'Net', unit: 'kWh', window: { of: 'import', less: 'export', within: 'hour' } } } })[0].id //=> "net"
 */
export function nettingWindows({
  measures = {},
}: Pick<TariffDocument, 'measures'>): readonly NettingWindow[] {
  return Object.entries(measures).flatMap(([id, { window }]) => {
    if (window === undefined || !isChannel(window.of) || !isChannel(window.less)) return [];
    const { of, less, within, from, to } = window;
    return [
      { id, of, less, within, ...(from === undefined ? {} : { from }), ...(to === undefined ? {} : { to }) },
    ];
  });
}

/** What a tariff asks of a quote that only an interval profile tells. */
export function needsProfile({ document }: Tariff): readonly Finding[] {
  const blocks = document.timeBlocks?.blocks.map(({ id }) => id) ?? [];
  const measures = nettingWindows(document).map(({ id }) => id);
  const parts = [
    ...(blocks.length === 0 ? [] : [`time blocks (${blocks.join(', ')})`]),
    ...(measures.length === 0 ? [] : [`netting inside windows of time (${measures.join(', ')})`]),
  ];
  if (parts.length === 0) return [];
  const what = [
    ...(blocks.length === 0 ? [] : ['in which block units are used']),
    ...(measures.length === 0 ? [] : ['how much of what is taken and given meets in a window']),
  ];
  const values = { parts: parts.join(' and '), what: what.join(', and ') };
  return [quoteFinding('quote/needs-profile', { path: ['selfUse'] }, values)];
}

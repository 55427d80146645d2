import { describe, expect, it } from 'vitest';
import { groupMembers, readGroup, type GroupDocument } from './group-document.ts';

const GROUP: GroupDocument = {
  format: 'unitbook-group-1',
  id: 'TAR-G1',
  host: 'TAR-1',
  members: [
    { account: 'TAR-1', percent: '62.5' },
    { account: 'TAR-2', percent: '37.50', capacity: '3.3' },
  ],
};

const text = (parts: Readonly<Record<string, unknown>> = {}): string =>
  JSON.stringify({ ...GROUP, ...parts }, null, 2);

const codes = (document: string): readonly string[] =>
  readGroup(document).findings.map(({ code, path }) => `${code} ${path.join('.')}`);

describe('a group document', () => {
  it('has a host and members, as written', () => {
    expect(readGroup(text())).toMatchObject({ value: GROUP, findings: [] });
  });

  it('may have a host that is no member, and members without any number', () => {
    const members = [{ account: 'TAR-2' }, { account: 'TAR-3' }];
    expect(readGroup(text({ members })).value?.members).toEqual(members);
  });

  it('tells every problem at once, of form and of meaning, in the order of the file', () => {
    const members = [
      { account: 'TAR-1', percent: 62.5 },
      { account: 'TAR-1', percent: '37.4', capacity: '0', colour: 'red' },
    ];
    expect(readGroup(text({ members })).value).toBeNull();
    expect(codes(text({ members }))).toEqual([
      'settlement/share-not-hundred members',
      'document/number-not-text members.0.percent',
      'settlement/share-same-member members.1',
      'settlement/share-capacity-not-above-zero members.1.capacity',
      'document/unknown-key members.1.colour',
    ]);
  });

  it.each([
    ['no host', { host: undefined }, ['document/missing-key host']],
    ['an empty account', { host: '' }, ['document/wrong-value host']],
    ['another format', { format: 'unitbook-group-2' }, ['document/wrong-value format']],
    ['no list of members', { members: undefined }, ['document/missing-key members']],
    ['no members', { members: [] }, ['settlement/share-no-members members']],
    [
      'a word for a number',
      { members: [{ account: 'A', percent: 'all' }] },
      ['document/not-a-decimal members.0.percent'],
    ],
  ])('cannot be used with %s', (_, parts, expected) => {
    expect(readGroup(text(parts)).value).toBeNull();
    expect(codes(text(parts))).toEqual(expected);
  });

  it('cannot be used when it is no JSON, or has a key twice', () => {
    expect(codes('{')).toEqual(['document/not-json ']);
    expect(codes(text().replace('"id": "TAR-G1",', '"id": "TAR-G1",\n  "id": "TAR-G2",'))).toEqual([
      'document/duplicate-key id',
    ]);
  });
});

describe('the members of a group', () => {
  it('know the host, and what each needs where it is known', () => {
    expect(groupMembers(GROUP, new Map([['TAR-2', 40_000]]))).toEqual([
      { id: 'TAR-1', isHost: true, percent: '62.5', capacity: undefined, need: undefined },
      { id: 'TAR-2', isHost: false, percent: '37.50', capacity: '3.3', need: 40_000 },
    ]);
  });
});

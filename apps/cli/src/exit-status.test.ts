import { expect, it } from 'vitest';
import { exitStatus } from './exit-status.ts';

const finding = (severity: 'error' | 'question' | 'note') => ({ severity });

it.each([
  [true, [], 0],
  [true, [finding('note')], 0],
  [true, [finding('note'), finding('question')], 1],
  [true, [finding('error')], 1],
  [false, [], 2],
  [false, [finding('error')], 2],
])('is, having run: %s, with %j: %i', (ran, findings, status) => {
  expect(exitStatus({ ran, findings })).toBe(status);
});

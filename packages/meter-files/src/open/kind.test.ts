import { describe, expect, it } from 'vitest';
import { meterFileKind } from './kind.ts';

const OBIS = '1-0:1.8.1(001581.123*kWh)\n1-0:2.8.1(000000.000*kWh)\n';

describe('the kind of a file', () => {
  it.each([
    ['nem12', '100,NEM12,200402070911,MDA1,Ret1\n200,N1'],
    ['nem12', '\ufeff\r\n"100","NEM12",200402070911\r\n'],
    ['nem12', '200,N1,E1,1,E1,N1,M1,kWh,30,\n300,20240101,1'],
    ['nem13', '100,NEM13,200402070911,MDA1,Ret1\n250,N1'],
    ['nem13', '250,N1,11,1,11,,M1,E,'],
    [
      'espi',
      '<?xml version="1.0"?>\n<feed xmlns="http://www.w3.org/2005/Atom">\n<x xmlns="http://naesb.org/espi"/>',
    ],
    ['telegram', `/KFM5KAIFA-METER\n\n${OBIS}`],
    // A capture that begins in the middle of a telegram.
    ['telegram', `${OBIS}!1234\n/ISk5\\2MT382-1000\n\n${OBIS}`],
    ['register-list', OBIS],
    ['register-list', '\u00021.8.0(0012345.6*kWh)\n2.8.0(0000001.0*kWh)\n!\n\u0003'],
    ['register-list', '2025-05-01\n1.8.0: 4342.1\n2.8.0: 2935.8'],
    ['register-list', '15.8.0 = 1234 kWh'],
    ['register-list', '1 May 2025\nimport 4342.1 kWh\nexport 2935.8 kWh'],
    ['own-register-list', 'date,import,export\n2025-04-01,1,2'],
    ['own-register-list', 'Export;Import;Date\n2;1;2025-04-01'],
    ['own-register-list', 'date,import,export'],
    ['table', 'date,import,export\n2025-04-01 00:15,1,2'],
    ['table', 'date,import,export,note\n2025-04-01,1,2,x'],
    ['table', 'time;kWh\n01.08.2025 00:15;0,25'],
    ['table', '1.8.25 00:15;0,25\n1.8.25 00:30;0,25'],
    ['table', '1.8.2025\t1\n2.8.2025\t2'],
    ['table', 'Report of meter 5\n\nwhen|value\n2025-04-01|1\n2025-04-02|2\n2025-04-03|2'],
  ])('is %s by %j', (kind, head) => {
    expect(meterFileKind(head).kind).toBe(kind);
  });

  it.each([
    ['', 'an empty file'],
    [' \n\t\r\n', 'an empty file'],
    ['<html><body>', 'a web page'],
    ['<?xml version="1.0"?><feed/>', 'XML without the namespace of ESPI'],
    ['Dear customer,\nyour data', 'text that is no meter data of a kind that is known'],
    ['12345', 'text that is no meter data of a kind that is known'],
  ])('is not told by %j', (head, why) => {
    expect(meterFileKind(head)).toEqual({ kind: null, why });
  });
});

import { describe, expect, it } from 'vitest';
import { headerRates } from './header-rates.ts';
import { headerMeaning, headerUnit, plainName } from './header-words.ts';

describe('the name of a column', () => {
  // Words of the trade in seven languages, each as a meter portal may write it.
  it.each([
    ['import_kwh', 'import'],
    ['Imported energy', 'import'],
    ['Energy purchased', 'import'],
    ['From grid', 'import'],
    ['Netzbezug (kWh)', 'import'],
    ['Strombezug', 'import'],
    ['Entnahme', 'import'],
    ['Afname normaal', 'import'],
    ['Energia prelevata', 'import'],
    ['Prelievo F1', 'import'],
    ['Soutirage', 'import'],
    ['Energía importada', 'import'],
    ['Energia comprada à rede', 'import'],
    ['export_kwh', 'export'],
    ['Feed-in', 'export'],
    ['To grid', 'export'],
    ['Einspeisung [Wh]', 'export'],
    ['Überschuss', 'export'],
    ['Rückspeisung', 'export'],
    ['Teruglevering', 'export'],
    ['Teruggeleverd', 'export'],
    ['Invoeding', 'export'],
    ['Immissione', 'export'],
    ['Energia immessa', 'export'],
    ['Injection', 'export'],
    ['Energía vertida', 'export'],
    ['Excedentes', 'export'],
    ['Energia injetada', 'export'],
    ['Solar export', 'export'],
    ['generation_kwh', 'generation'],
    ['PV production', 'generation'],
    ['Solar', 'generation'],
    ['Erzeugung', 'generation'],
    ['Opwek', 'generation'],
    ['Opgewekte zonne-energie', 'generation'],
    ['Produzione', 'generation'],
    ['Producción', 'generation'],
    ['Produção', 'generation'],
    ['Produit', 'generation'],
    ['1.8.0', 'import'],
    ['1-0:1.8.1*255', 'import'],
    ['2.8.2', 'export'],
    ['1-0:2.29.0', 'export'],
    ['16.8.0', 'net'],
  ] as const)('%j says %s, for certain', (name, is) => {
    expect([headerMeaning(name)?.is, headerMeaning(name)?.certain]).toEqual([is, true]);
  });

  it.each([
    ['Consumption', 'import'],
    ['Usage (kWh)', 'import'],
    ['Verbrauch', 'import'],
    ['Verbruik', 'import'],
    ['Levering', 'import'],
    ['Consumo', 'import'],
    ['Consommation', 'import'],
    ['Lieferung', 'export'],
    ['Net', 'net'],
    ['Saldo', 'net'],
    ['Import - export', 'net'],
    ['Net import', 'net'],
    ['Eigenverbrauch', 'other'],
    ['Self-consumption', 'other'],
    ['Autoconsumo', 'other'],
    ['Solar consumption', 'other'],
    ['battery_discharge_kwh', 'other'],
    ['House load', 'other'],
  ] as const)('%j likely says %s', (name, is) => {
    expect([headerMeaning(name)?.is, headerMeaning(name)?.certain]).toEqual([is, false]);
  });

  it.each([
    ['Import price'],
    ['Kosten Netzbezug'],
    ['€/kWh'],
    ['Solar power (kW)'],
    ['Voltage'],
    ['Blindenergie'],
    ['kvarh import'],
    ['Temperature'],
    ['3.8.0'],
    ['1.7.0'],
  ])('%j says that it is not energy to be read', (name) => {
    expect(headerMeaning(name)?.is).toBe('nothing');
  });

  it.each(['Value', 'kWh', 'Reading', 'Channel 7', '', '192.168.1.8.0'])('%j says nothing', (name) => {
    expect(headerMeaning(name)).toBeNull();
  });

  it.each([
    ['Import T1 kWh', 'kWh'],
    ['importkWh', 'kWh'],
    ['Import [Wh]', 'Wh'],
    ['export_wh', 'Wh'],
    ['MWH', 'MWh'],
    ['kW', null],
    ['kvarh', null],
    ['growth', null],
    ['', null],
  ])('%j has the unit %s', (name, unit) => {
    expect(headerUnit(name)).toBe(unit);
  });

  it('is put into plain words', () => {
    expect(plainName('  Énergie_injectéeTotal (kWh)')).toBe('energie injectee total kwh');
  });
});

describe('rates', () => {
  const ids = (...names: readonly string[]): readonly (string | null)[] =>
    headerRates(names).map((rate) => rate?.id ?? null);

  it('are told by the number of the file', () => {
    expect(ids('Import T1 kWh', 'Import T2 kWh', 'Export kWh')).toEqual(['1', '2', null]);
    expect(ids('1.8.0', '1.8.1', '1-0:1.8.2*255')).toEqual([null, '1', '2']);
    expect(ids('Prelievo F1', 'Tarif 3', 'rate_4')).toEqual(['1', '3', '4']);
  });

  it('are told by its words where there are several', () => {
    expect(ids('import_normal', 'import_low')).toEqual(['normal', 'low']);
    expect(ids('Bezug HT', 'Bezug NT')).toEqual(['ht', 'nt']);
    expect(ids('low import')).toEqual([null]);
  });

  it('are never said to be peak', () => {
    expect(ids('Peak import', 'Off-peak import', 'Peak export')).toEqual(['1', '2', '1']);
    expect(ids('Consumo punta', 'Consumo valle', 'Consumo llano')).toEqual(['1', '2', '3']);
  });
});

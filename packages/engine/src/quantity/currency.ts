/**
 * Minor units of ISO 4217 currencies: how many decimals an amount of each has.
 *
 * Written down here because the locale library's display digits are not the standard's (it says 0 for
 * IQD and PKR). Source: ISO 4217:2015 list of currency codes, ISO/SIX; typed in from memory and compared
 * with published extracts for USD, BHD, MRU and MGA.
 */
const MINOR_UNITS: Readonly<Record<number, string>> = {
  0: 'BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX UYI VND VUV XAF XOF XPF',
  2:
    'AED AFN ALL AMD ANG AOA ARS AUD AWG AZN BAM BBD BDT BGN BMD BND BOB BOV BRL BSD BTN BWP BYN BZD CAD ' +
    'CDF CHE CHF CHW CNY COP COU CRC CUP CVE CZK DKK DOP DZD EGP ERN ETB EUR FJD FKP GBP GEL GHS GIP GMD ' +
    'GTQ GYD HKD HNL HTG HUF IDR ILS INR IRR JMD KES KGS KHR KPW KYD KZT LAK LBP LKR LRD LSL MAD MDL MGA ' +
    'MKD MMK MNT MOP MRU MUR MVR MWK MXN MXV MYR MZN NAD NGN NIO NOK NPR NZD PAB PEN PGK PHP PKR PLN QAR ' +
    'RON RSD RUB SAR SBD SCR SDG SEK SGD SHP SLE SOS SRD SSP STN SVC SYP SZL THB TJS TMT TOP TRY TTD TWD ' +
    'TZS UAH USD USN UYU UZS VED VES WST XCD YER ZAR ZMW ZWL',
  3: 'BHD IQD JOD KWD LYD OMR TND',
  4: 'CLF UYW',
};

const DIGITS: ReadonlyMap<string, number> = new Map(
  Object.entries(MINOR_UNITS).flatMap(([digits, codes]) =>
    codes.split(' ').map((code): [string, number] => [code, digits.charCodeAt(0) - 48]),
  ),
);

/**
 * How many decimals an amount of a currency has.
 *
 * @param code  ISO 4217 alphabetic code
 * @returns     0 to 4, or null for a code that is not in the list
 * @source      ISO 4217:2015
 * @example
 * minorUnitDigits('INR') //=> 2
 * minorUnitDigits('KWD') //=> 3
 */
export function minorUnitDigits(code: string): number | null {
  return DIGITS.get(code) ?? null;
}

import type { AssumptionWords } from './assumption-words.ts';
import type { PaperCases, PaperChart } from './quote-words.ts';

/** What the figures hang on, in Hindi. */
export const HINDI_ASSUMPTIONS: AssumptionWords = {
  tariff: 'टैरिफ़',
  rise: 'दरों में वृद्धि',
  ownUse: 'घर में खपत',
  wear: 'क्षमता में कमी',
  upkeep: 'रखरखाव',
  discount: 'बट्टा दर',
  life: 'जीवनकाल',
  use: 'खपत',
  subsidy: 'सब्सिडी',
  notAtAll: 'कोई वृद्धि नहीं',
  unknownUse: 'ज्ञात नहीं: शून्य',
  counted: 'मंज़ूर मानकर गिनी गई',
  none: 'कोई नहीं',
  apart: '; ',
  surplus: 'अधिशेष की दर',
  byIntervals: 'अंतराल-आँकड़ों से',
  growing: (percent) => `+${percent}\u00a0% प्रति वर्ष`,
  rises: (percent, charges) => `${percent}\u00a0% प्रति वर्ष (${charges})`,
  wears: (first, later) =>
    first === later ? `${first}\u00a0% प्रति वर्ष` : `वर्ष 2 में ${first}\u00a0%, फिर ${later}\u00a0% प्रति वर्ष`,
  maintenance: (money, growth) => `${money} प्रति वर्ष, हर वर्ष +${growth}\u00a0%`,
  replaced: (item, year, money) => `${item}: वर्ष ${year} में ${money}`,
  years: (years) => `${years} वर्ष`,
  used: (growth) => `दिए गए बारह महीनों जैसी${growth === '' ? '' : `, +${growth}\u00a0% प्रति वर्ष`}`,
};

/** The chart of the printed quote in Hindi. */
export const HINDI_CHART: PaperChart = {
  title: 'ख़र्च और बचत, वर्ष के अनुसार',
  says: (first, last, years) =>
    `रेखा ${first} से शुरू होती है और ${years} बाद ${last} पर समाप्त होती है। यह अनुमान है, वादा नहीं।`,
  across: 'ख़रीद के बाद के वर्ष',
  payback: (years) => `लागत वसूली: ${years}`,
  band: 'बिंदुओं वाली रेखा: कोटेशन के अनुसार। तिरछी रेखाएँ: P10 से P90, दस में से आठ परिणाम। टूटी रेखा: P50, आधे परिणाम इससे ऊपर समाप्त होते हैं।',
};

/** The cases of the printed quote in Hindi. */
export const HINDI_CASES: PaperCases = {
  names: {
    'rise-0': () => 'दरें नहीं बढ़तीं',
    'rise-twice': (percent) => `दरें ${percent}\u00a0% प्रति वर्ष बढ़ती हैं`,
    'generation-less': (percent) => `उत्पादन ${percent}\u00a0% कम`,
    'use-less': (percent) => `खपत ${percent}\u00a0% कम`,
    'use-more': (percent) => `खपत ${percent}\u00a0% ज़्यादा`,
    degradation: (percent) => `क्षमता में हर वर्ष ${percent}\u00a0% कमी`,
    'subsidy-refused': () => 'सब्सिडी नहीं मिली',
    'surplus-unpaid': () => 'अधिशेष का भुगतान नहीं',
    'all-bad': () => 'सब कुछ एक साथ प्रतिकूल',
  },
  already: (name) => `${name}: वर्ष 1 से ही`,
  notBilled: 'बिल नहीं बन सकता',
  noReturn: 'कोई नहीं',
  several: (rates) => `कई: ${rates}`,
  ofSeveral: 'कई प्रतिफल दरों में से कोई नहीं बताती कि फ़ायदा है या नहीं; यह शुद्ध वर्तमान मूल्य बताता है।',
};

import { readFileSync } from 'node:fs';
import { readTariff, readQuote, prepareQuote, fillUnits, quoteDrawer, quoteSizes, workOutQuote, workOutCases, ownUseOf, makeLifeUnits, readProfile, parseDay, quoteBounds, type QuoteProfile } from '@unitbook/engine';
const t = readTariff(readFileSync('tariffs-examples/tarumira/taresco-domestic/tariff.json','utf8')).value!;
const tb = readTariff(readFileSync('tariffs-examples/tarumira/taresco-time-blocks/tariff.json','utf8')).value!;
const q = readQuote(readFileSync('tariffs-examples/quotes/rooftop-4-kilowatt.json','utf8')).value!;
let seed = 12345; const rnd = () => { seed = (Math.imul(seed, 1664525) + 1013904223) >>> 0; return seed / 2**32; };
function profile(minutes: number): QuoteProfile {
  const from = parseDay('2025-01-01')! * 1440; const n = 365 * 1440 / minutes;
  const starts = Int32Array.from({length:n}, (_, i) => from + i*minutes);
  const use = new Float64Array(n), generation = new Float64Array(n);
  let cloud = 1;
  for (let i=0;i<n;i++){ const m=(i*minutes)%1440; if (m===0) cloud = 0.2+0.8*rnd(); const h=m/60; 
    const sun=Math.max(0,Math.sin((h-6)/12*Math.PI)); generation[i]=Math.round(4000*sun*cloud*(0.7+0.3*rnd())*minutes/60);
    const base=250+ (h>6&&h<9?500:0)+(h>18&&h<23?900:0); use[i]=Math.round(base*(0.3+1.4*rnd())*minutes/60); }
  return { minutes, starts, use, generation };
}
const time = (name: string, n: number, f: () => void) => { for (let k=0;k<n/5;k++) f(); const all:number[]=[]; for (let r=0;r<5;r++){ const s=performance.now(); for (let k=0;k<n;k++) f(); all.push((performance.now()-s)/n*1000);} all.sort((a,b)=>a-b); console.log(name.padEnd(44), all[0]!.toFixed(1), 'us best,', all[2]!.toFixed(1), 'median'); };
const battery = { capacity: '5', power: '2.5', efficiency: '85', cost: '100000' };
const qb = { ...q, document: { ...q.document, battery } };
for (const minutes of [60, 15]) {
  const raw = profile(minutes);
  time(`read profile ${minutes}`, 3, () => { readProfile(raw, () => null); });
  const p = prepareQuote(q, t, undefined, { profile: raw }); console.log(p.findings.map(f=>f.code));
  const pb = prepareQuote(qb, t, undefined, { profile: raw }).value!;
  const own = ownUseOf(p.value!); const ownB = ownUseOf(pb);
  time(`fill profile ${minutes}`, 2000, () => fillUnits(q, own, p.value!.units));
  time(`fill profile battery ${minutes}`, 5, () => fillUnits(qb, ownB, pb.units));
  const w = workOutQuote(pb); const w0 = workOutQuote(p.value!);
  console.log('own y1', w0.years[0]!.selfUse/1000, w.years[0]!.selfUse/1000, w.years[0]!.generation/1000 - w.years[0]!.exported/1000, w.battery);
  const fast = ownB.forDraws(); const u = makeLifeUnits(300);
  const s = performance.now(); fillUnits(qb, fast, u); console.log('table first fill ms', performance.now()-s);
  // accuracy over random levels
  let worst=0, worstK=0, sum=0, count=0, yearWorst=0;
  for (let k=0;k<40;k++){ const g=0.75+0.5*rnd(), us=0.75+0.5*rnd();
    const basis={...qb, generation: qb.generation.map(x=>Math.round(x*g/1000)*1000), use: qb.use.map(x=>Math.round(x*us/1000)*1000), unitStep: 1 as const};
    const e=makeLifeUnits(300), a=makeLifeUnits(300);
    fillUnits(basis, ownUseOf({input: basis, share: pb.share, profile: pb.profile, hasBattery: true}), e);
    const fine = ownUseOf({input: {...qb, unitStep: 1}, share: pb.share, profile: pb.profile, hasBattery: true}).forDraws();
    fillUnits(basis, fine, a);
    for (let y=0;y<25;y++){ let d=0; for (let m=y*12;m<y*12+12;m++){ const x=(a.selfUse[m]!-e.selfUse[m]!)/1000; d+=x; worst=Math.max(worst,Math.abs(x)); const kx=(a.withPlant[m*4+1]!-e.withPlant[m*4+1]!)/1000; worstK=Math.max(worstK,Math.abs(kx)); sum+=Math.abs(x); count++; } yearWorst=Math.max(yearWorst,Math.abs(d)); } }
  console.log(`table vs exact ${minutes}: worst own`, worst.toFixed(2), 'worst export', worstK.toFixed(2), 'mean', (sum/count).toFixed(3), 'worst year', yearWorst.toFixed(2));
  time(`fill table ${minutes}`, 200, () => fillUnits(qb, fast, u));
  const d = quoteDrawer(pb, t).value!; d.draw(1);
  time(`draw block battery ${minutes}`, 3, () => { d.draw(0); });
  const d0 = quoteDrawer(p.value!, t).value!; d0.draw(1);
  time(`draw block profile ${minutes}`, 3, () => { d0.draw(0); });
  time(`sizes 40 battery ${minutes}`, 1, () => { quoteSizes(pb, {from:200,step:200,count:40}); });
  time(`cases battery ${minutes}`, 1, () => { workOutCases(qb, t, { profile: raw }); });
  const qt = { ...qb, document: { ...qb.document, escalation: { charges: { peak: '2' }, basis: 'x' }, policies: [], uncertainty: { generation: '7', use: '10', escalation: '1', degradation: '0.2' } } };
  const pt = prepareQuote(qt, tb, undefined, { profile: raw }); console.log(pt.findings.map(f=>f.code+' '+f.found));
  if (pt.value) { const wt = workOutQuote(pt.value); console.log('blocks', wt.years[0]!.before/100, wt.years[0]!.after/100, wt.battery);
    const ot = ownUseOf(pt.value); time(`fill blocks battery ${minutes}`, 5, () => fillUnits(qt, ot, pt.value!.units));
    const on = ownUseOf({...pt.value, hasBattery: false}); time(`fill blocks ${minutes}`, 100, () => fillUnits(qt, on, pt.value!.units));
    const dt = quoteDrawer(pt.value, tb); console.log(dt.findings.map(f=>f.found)); time(`draw block blocks battery ${minutes}`, 2, () => { dt.value!.draw(0); }); }
}
const qs = { ...q, share: null };
const b = quoteBounds({...qs}, t).value!; console.log('bounds', b.low.years[0]!.selfUse, b.high.years[0]!.selfUse, b.low.years[0]!.saving, b.high.years[0]!.saving);
const dB = workOutQuote(prepareQuote(qb, t).value!); console.log('daily', dB.years[0]!.selfUse/1000, dB.battery, prepareQuote(qb,t).findings.map(f=>f.code));

// Looks at the golden sheets and pictures in a browser: labels that overlap or are cut,
// contrast and structure (axe-core), markup (html-validate), pages when printed, and the
// calendars with a parser of another language (ical.js). Screenshots go to OUT.
import fs from 'node:fs';
import path from 'node:path';
import { createRequire } from 'node:module';
import { chromium } from 'playwright-core';
import { HtmlValidate } from 'html-validate';
import ICAL from 'ical.js';
import { textsThatCollide } from './collide.mjs';

const require = createRequire(import.meta.url);
const axe = fs.readFileSync(require.resolve('axe-core/axe.min.js'), 'utf8');
const [golden, out] = process.argv.slice(2);
const days = ['small', 'party', 'overnight', 'crowded'];
const faults = [];
const fault = (where, what) => { faults.push(`${where}: ${what}`); };

fs.mkdirSync(out, { recursive: true });
const browser = await chromium.launch({ executablePath: process.env.CHROMIUM, args: ['--no-sandbox', '--disable-gpu'] });

async function view(file, html, width, scheme, check) {
  const page = await browser.newPage({ viewport: { width, height: 900 }, colorScheme: scheme });
  const asked = [];
  page.on('request', (r) => { if (!/^(data|about|file):/.test(r.url())) asked.push(r.url()); });
  await page.setContent(html, { waitUntil: 'load' });
  const where = `${file} at ${width} px, ${scheme}`;
  for (const text of await page.evaluate(textsThatCollide)) fault(where, text);
  const wide = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
  if (wide > 0) fault(where, `${wide} px wider than the window`);
  for (const url of asked) fault(where, `asks for ${url}`);
  if (check) await check(page, where);
  await page.screenshot({ path: path.join(out, `${file}.${width}.${scheme}.png`), fullPage: true });
  await page.close();
}

async function accessible(page, where) {
  await page.evaluate(axe);
  const result = await page.evaluate(() => window.axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa', 'best-practice'] }));
  for (const v of result.violations) fault(where, `${v.id}: ${v.help} (${v.nodes[0].target})`);
}

const validator = new HtmlValidate({ extends: ['html-validate:recommended'], rules: {
  'no-inline-style': 'off', 'long-title': 'off',
  'void-style': 'off',
} });

// The checks must be able to fail.
{
  const before = faults.length;
  const bad = '<!DOCTYPE html><html lang="en"><head><title>bad</title></head><body><main><h1 style="color:#aaa">pale</h1>'
    + '<svg viewBox="0 0 100 40" width="100" role="img" aria-label="x"><text x="5" y="20">one</text><text x="12" y="22">two</text><text x="90" y="20">cut</text></svg></main></body></html>';
  await view('selftest', bad, 390, 'light', accessible);
  const got = faults.splice(before).join('\n');
  for (const want of ['"one" touches "two"', '"cut" is cut', 'color-contrast']) if (!got.includes(want)) fault('self test', `does not find ${want}`);
}

async function sheet(name) {
  const html = fs.readFileSync(path.join(golden, name), 'utf8');
  const report = await validator.validateString(html);
  for (const r of report.results) for (const m of r.messages) fault(`${name}:${m.line}:${m.column}`, `${m.ruleId}: ${m.message}`);
  for (const width of [360, 1280]) for (const scheme of ['light', 'dark']) await view(name, html, width, scheme, accessible);
  return html;
}

await sheet('odd.html');
for (const day of days) {
  const name = `${day}.html`;
  const html = await sheet(name);
  const page = await browser.newPage();
  await page.setContent(html);
  for (const format of ['A4', 'Letter']) {
    const pdf = await page.pdf({ format, printBackground: true, path: path.join(out, `${name}.${format}.pdf`) });
    const pages = (pdf.toString('latin1').match(/\/Type\s*\/Page\b(?!s)/g) || []).length;
    console.log(`${name}: ${pages} pages of ${format}`);
    if (day === 'party' && pages > 2) fault(name, `${pages} pages of ${format}, wanted at most 2`);
  }
  await page.close();

  for (const picture of ['timeline', 'curves', 'grate']) {
    const file = `${day}.${picture}.svg`;
    const svg = fs.readFileSync(path.join(golden, file), 'utf8');
    const alone = `<!DOCTYPE html><html lang="en"><head><meta charset="utf-8"><title>${file}</title></head><body style="margin:8px">${svg}</body></html>`;
    for (const scheme of ['light', 'dark']) await view(file, alone, 360, scheme);
    await view(file, alone, 1280, 'light');
  }

  const calendar = new ICAL.Component(ICAL.parse(fs.readFileSync(path.join(golden, `${day}.ics`), 'utf8')));
  for (const zone of calendar.getAllSubcomponents('vtimezone')) ICAL.TimezoneService.register(zone);
  const plan = JSON.parse(fs.readFileSync(path.join(golden, `${day}.plan.json`), 'utf8'));
  const starts = new Map(calendar.getAllSubcomponents('vevent').map((e) => [e.getFirstPropertyValue('uid'), new ICAL.Event(e).startDate.toJSDate()]));
  for (const step of plan.steps) {
    const at = starts.get(step.id);
    if (!at || Math.abs(at - new Date(step.at)) > 30000) fault(`${day}.ics`, `${step.kind} at ${step.at} is ${at}`);
  }
}
await browser.close();
for (const f of faults) console.error(f);
console.log(faults.length ? `${faults.length} faults` : 'no faults');
process.exit(faults.length ? 1 : 0);

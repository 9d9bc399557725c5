// What every page is held against: labels of pictures that touch or are cut, letters large
// enough, nothing wider than the window, nothing fetched, contrast and structure (axe-core),
// markup (html-validate).
import fs from 'node:fs';
import path from 'node:path';
import { createRequire } from 'node:module';
import { chromium } from 'playwright-core';
import { HtmlValidate } from 'html-validate';
import { lettersTooSmall, textsThatCollide } from './collide.mjs';

const axe = fs.readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const validator = new HtmlValidate({ extends: ['html-validate:recommended'], rules: { 'no-inline-style': 'off', 'long-title': 'off', 'void-style': 'off' } });

// leastLetter is the height of letters on a phone, px.
const leastLetter = 14;

export async function looker(out) {
  fs.mkdirSync(out, { recursive: true });
  const browser = await chromium.launch({ executablePath: process.env.CHROMIUM, args: ['--no-sandbox', '--disable-gpu'] });
  const faults = [];
  const fault = (where, what) => { faults.push(`${where}: ${what}`); };

  async function accessible(page, where) {
    if (!await page.evaluate(() => 'axe' in window)) await page.evaluate(axe);
    const result = await page.evaluate(() => window.axe.run(document, { resultTypes: ['violations'], runOnly: ['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa', 'best-practice'] }));
    for (const v of result.violations) fault(where, `${v.id}: ${v.help} (${v.nodes[0].target})`);
  }

  // view shows a page at some widths, each in its scheme, with all that is folded unfolded
  // once it was taken a screenshot of (picture). The check is done at each, or once.
  async function view(file, html, looks, { check, once = false, picture = true, letters = false } = {}) {
    const page = await browser.newPage({ viewport: { width: looks[0][0], height: 800 } });
    const asked = [];
    page.on('request', (r) => { if (!/^(data|about|file):/.test(r.url())) asked.push(r.url()); });
    await page.setContent(html, { waitUntil: 'load' });
    for (const [i, [width, scheme]] of looks.entries()) {
      const where = `${file} at ${width} px, ${scheme}`;
      await page.setViewportSize({ width, height: 800 });
      await page.emulateMedia({ colorScheme: scheme });
      await page.evaluate(() => { for (const d of document.querySelectorAll('details')) d.open = false; });
      if (picture) await page.screenshot({ path: path.join(out, `${file}.${width}.${scheme}.png`), fullPage: true });
      await page.evaluate(() => { for (const d of document.querySelectorAll('details')) d.open = true; });
      for (const text of await page.evaluate(textsThatCollide)) fault(where, text);
      if (letters && width < 600) for (const text of await page.evaluate(lettersTooSmall, leastLetter)) fault(where, text);
      const wide = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
      if (wide > 0) fault(where, `${wide} px wider than the window`);
      if (check && !(once && i)) await check(page, where);
    }
    for (const url of asked) fault(file, `asks for ${url}`);
    await page.close();
  }

  async function valid(name, html) {
    const report = await validator.validateString(html);
    for (const r of report.results) for (const m of r.messages) fault(`${name}:${m.line}:${m.column}`, `${m.ruleId}: ${m.message}`);
  }

  // printed counts the pages of a sheet on paper.
  async function printed(name, html, format) {
    const page = await browser.newPage();
    await page.setContent(html);
    const pdf = await page.pdf({ format, printBackground: true, path: path.join(out, `${name}.${format}.pdf`) });
    await page.close();
    return (pdf.toString('latin1').match(/\/Type\s*\/Page\b(?!s)/g) || []).length;
  }

  // firstStep is how far down the first step not yet done stands on a phone, px; -1 without one.
  async function firstStep(html) {
    const page = await browser.newPage({ viewport: { width: 360, height: 800 } });
    await page.setContent(html);
    const down = await page.evaluate(() => {
      const open = [...document.querySelectorAll('.now .big .time, .then .time, td.tick span:not(.done)')].filter((e) => e.getClientRects().length > 0);
      return open.length ? Math.min(...open.map((e) => e.getBoundingClientRect().bottom + window.scrollY)) : -1;
    });
    await page.close();
    return Math.round(down);
  }

  // selfTest: the checks must be able to fail.
  async function selfTest() {
    const before = faults.length;
    const bad = '<!DOCTYPE html><html lang="en"><head><title>bad</title></head><body><main><h1 style="color:#aaa">pale</h1>'
      + '<svg viewBox="0 0 100 40" width="100" role="img" aria-label="x" style="font-size:9px"><text x="5" y="20">one</text><text x="12" y="22">two</text><text x="90" y="20">cut</text></svg></main></body></html>';
    await view('selftest', bad, [[360, 'light']], { check: accessible, letters: true });
    const got = faults.splice(before).join('\n');
    for (const want of ['"one" touches "two"', '"cut" is cut', 'color-contrast', '"one" is 9.0 px']) if (!got.includes(want)) fault('self test', `does not find ${want}`);
  }

  // done prints the faults and ends.
  async function done(said) {
    await browser.close();
    for (const f of faults) console.error(f);
    console.log(`${said}; ${faults.length ? `${faults.length} faults` : 'no faults'}`);
    process.exit(faults.length ? 1 : 0);
  }
  return { accessible, done, fault, firstStep, printed, selfTest, valid, view };
}

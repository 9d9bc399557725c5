// Follows a day on the live sheet in a browser, as a cook would with thumbs: eight entries
// by form, the times move, one is taken back; without script and with, on a phone and on a
// wide screen, light and dark. SERVICE is one address or several; the same is done at each.
import fs from 'node:fs';
import http from 'node:http';
import path from 'node:path';
import { createRequire } from 'node:module';
import { chromium } from 'playwright-core';
import { HtmlValidate } from 'html-validate';
import { textsThatCollide } from './collide.mjs';

const require = createRequire(import.meta.url);
const axe = fs.readFileSync(require.resolve('axe-core/axe.min.js'), 'utf8');
const [out, ...services] = process.argv.slice(2);
const faults = [];
const fault = (where, what) => { faults.push(`${where}: ${what}`); };
fs.mkdirSync(out, { recursive: true });
const browser = await chromium.launch({ executablePath: process.env.CHROMIUM, args: ['--no-sandbox', '--disable-gpu'] });
const validator = new HtmlValidate({ extends: ['html-validate:recommended'], rules: { 'no-inline-style': 'off', 'long-title': 'off', 'void-style': 'off', 'require-sri': 'off' } });
const seen = new Set();

// planned has a meal planned that is due in so many minutes: a chicken and burgers with a
// name that is markup.
async function planned(service, minutes) {
  const zone = 'America/Chicago';
  const at = new Date(Date.now() + minutes * 60e3);
  const part = (o) => new Intl.DateTimeFormat('en-CA', { timeZone: zone, hourCycle: 'h23', ...o }).format(at);
  const request = { format: 1, name: 'Lunch <b>by</b> the lake', guests: 6,
    serve: { date: part({ year: 'numeric', month: '2-digit', day: '2-digit' }), time: part({ hour: '2-digit', minute: '2-digit' }), tz: zone },
    grill: { kind: 'kettle', diameter: '22 in' },
    dishes: [{ name: 'Chicken', cut: 'chicken-spatchcock', weight: '4 lb' }, { name: '<i>Burgers</i> & "buns"', cut: 'burger', weight: '6 oz', count: 4 }] };
  const answer = await fetch(`${service}/v1/plans`, { method: 'POST', headers: { 'Content-Type': 'application/json' }, body: JSON.stringify(request) });
  if (answer.status !== 201) throw new Error(await answer.text());
  return answer.json();
}

// looked holds a page as it stands against all that must hold of it.
async function looked(page, where, asked) {
  for (const text of await page.evaluate(textsThatCollide)) fault(where, text);
  const wide = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
  if (wide > 0) fault(where, `${wide} px wider than the window`);
  const small = await page.evaluate(() => [...document.querySelectorAll('button, select, input:not([type=hidden])')]
    .filter((e) => { const r = e.getBoundingClientRect(); return r.height < 44 || r.width < 44; }).map((e) => e.outerHTML.slice(0, 60)));
  for (const s of small) fault(where, `too small for a thumb: ${s}`);
  if (await page.locator('b:not(.time), i, img').count()) fault(where, 'a name is markup');
  for (const url of asked) if (!url.startsWith(new URL(page.url()).origin)) fault(where, `asks for ${url}`);
  const html = await (await fetch(page.url())).text();
  const report = await validator.validateString(html);
  for (const r of report.results) for (const m of r.messages) fault(`${where}:${m.line}`, `${m.ruleId}: ${m.message}`);
}

async function accessible(page, where) {
  const result = await page.evaluate((code) => { (0, eval)(code); return window.axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa', 'best-practice'] }); }, axe);
  for (const v of result.violations) fault(where, `${v.id}: ${v.help} (${v.nodes[0].target})`);
}

// timesOf are those of the steps to take food off, and to serve it, as the page says them.
const timesOf = (page) => page.locator('#day > section tr', { hasText: /take off|serve/i }).locator('.time').allTextContents();

async function day(service, width, scheme, script) {
  const where = `${service} at ${width} px, ${scheme}, ${script ? 'with' : 'without'} script`;
  const plan = await planned(service, 150);
  const context = await browser.newContext({ viewport: { width, height: 800 }, colorScheme: scheme, javaScriptEnabled: script, bypassCSP: false });
  const page = await context.newPage();
  page.setDefaultTimeout(20000);
  const asked = [];
  page.on('request', (r) => { if (!/^(data|about):/.test(r.url())) asked.push(r.url()); });
  let refusing = false;
  page.on('console', (m) => { if (m.type() === 'error' && !(refusing && m.text().includes('400'))) fault(where, `console: ${m.text()}`); });
  await page.goto(`${service}/v1/plans/${plan.id}.html`);
  const first = await page.locator('main h2').first().textContent();
  if (first !== 'Do now') fault(where, `the page begins with ${first}`);
  const top = await page.locator('.now').evaluate((e) => e.getBoundingClientRect().top).catch(() => 0);
  if (top > 400) fault(where, `what to do now is ${top} px down`);
  await page.screenshot({ path: path.join(out, `live.${width}.${scheme}.${script ? 'script' : 'plain'}.png`), fullPage: true });

  const before = await page.content();
  const told = await timesOf(page);
  const reading = async (of, degrees) => {
    await page.selectOption('#of', of);
    await page.fill('#degrees', degrees);
    await Promise.all([page.waitForURL(/\.html$/), page.waitForResponse((r) => r.status() === 303), page.getByRole('button', { name: 'Log the reading' }).click()]);
  };
  const did = async (form, button, dish) => {
    const f = page.locator('form', { has: page.locator('legend', { hasText: form }) });
    if (dish) await f.locator('select').selectOption(dish);
    await Promise.all([page.waitForResponse((r) => r.status() === 303), f.getByRole('button', { name: button, exact: true }).click()]);
    await page.waitForLoadState('load');
  };
  const chicken = plan.dishes[0].id, burgers = plan.dishes[1].id;
  await did('The fire', 'Lit');
  await reading('grate', '180');
  await did('to the food', 'On the grill', chicken);
  await reading(`core ${chicken}`, '61');
  await reading('grate', '340');
  await page.locator('summary', { hasText: 'The vents' }).click();
  await page.selectOption('#top', '1/2');
  await page.selectOption('#bottom', '1/4');
  await did('The vents', 'They stand like this');
  await reading(`core ${chicken}`, '118');
  const moved = await timesOf(page);
  if (JSON.stringify(told) === JSON.stringify(moved)) fault(where, `the times have not moved: ${told}`);
  if (told.length < 3) fault(where, `only ${told.length} times are looked at`);
  await did('The fire', 'Fuel added');
  const lines = await page.locator('.log li').count();
  if (lines !== 8) fault(where, `${lines} entries are listed, want 8`);
  if (before === await page.content()) fault(where, 'the page has not changed');
  await Promise.all([page.waitForResponse((r) => r.status() === 303), page.getByRole('button', { name: /^Take back: .*Fuel added/ }).click()]);
  await page.waitForLoadState('load');
  if (await page.locator('.log li').count() !== 7) fault(where, 'the entry was not taken back');
  await page.reload();
  const kept = await (await fetch(`${service}/v1/plans/${plan.id}`)).json();
  if (kept.log.length !== 7) fault(where, `the log has ${kept.log.length} entries`);

  if (script) await refreshed(page, service, plan, where);
  refusing = true;
  await page.selectOption('#of', 'grate');
  await page.fill('#degrees', 'hot');
  await Promise.all([page.waitForResponse((r) => r.status() === 400), page.getByRole('button', { name: 'Log the reading' }).click()]);
  await page.waitForLoadState('load');
  if (!await page.locator('[role=alert]').count() || await page.inputValue('#degrees') !== 'hot') fault(where, 'what is wrong is not said beside what was typed');
  await page.goto(`${service}/v1/plans/${plan.id}.html`);
  await looked(page, where, asked);
  await page.screenshot({ path: path.join(out, `live-day.${width}.${scheme}.${script ? 'script' : 'plain'}.png`), fullPage: true });
  await context.close();
  // axe needs a script in the page, which the page's own policy refuses.
  const open = await browser.newContext({ viewport: { width, height: 800 }, colorScheme: scheme, bypassCSP: true });
  const again = await open.newPage();
  await again.goto(`${service}/v1/plans/${plan.id}.html`);
  await accessible(again, where);
  const feed = (await (await fetch(`${service}/v1/plans/${plan.id}/feed`)).json()).path;
  await again.goto(`${service}${feed}.html`);
  if (await again.locator('form, button').count()) fault(where, 'the feed has forms');
  await accessible(again, `${where}, feed`);
  await open.close();
  seen.add(where);
}

// refreshed: the page follows what somebody else logs, and what is being typed stays.
async function refreshed(page, service, plan, where) {
  await page.fill('#degrees', '27');
  await page.focus('#degrees');
  await page.evaluate(() => new Promise((done) => setTimeout(done, 500))); // the stream is open by then
  const posted = await fetch(`${service}/v1/plans/${plan.id}/readings`, { method: 'POST', headers: { 'Content-Type': 'application/json' }, body: JSON.stringify([{ time: new Date().toISOString(), kind: 'gauge', value: '401 F' }]) });
  if (posted.status !== 200) fault(where, `the reading is answered with ${posted.status}: ${await posted.text()}`);
  const began = Date.now();
  await page.locator('#logged li', { hasText: '401' }).first().waitFor({ timeout: 5000 }).catch((e) => fault(where, `the page does not follow the stream: ${e}`));
  const took = Date.now() - began;
  if (took > 2000) fault(where, `the page followed after ${took} ms`);
  if (await page.inputValue('#degrees') !== '27') fault(where, 'what was typed is gone');
  await page.fill('#degrees', '');
}

// forged: a page of another origin that knows the address cannot log.
async function forged(service) {
  const plan = await planned(service, 150);
  const evil = http.createServer((_, w) => {
    w.setHeader('Content-Type', 'text/html');
    w.end(`<!DOCTYPE html><title>x</title><form method="post" action="${service}/v1/plans/${plan.id}/sheet"><input name="did" value="lit"><button>win</button></form>`);
  });
  await new Promise((ready) => evil.listen(0, '127.0.0.1', ready));
  const page = await browser.newPage();
  for (const policy of ['', '?quiet']) {
    await page.goto(`http://127.0.0.1:${evil.address().port}/${policy}`);
    const [answer] = await Promise.all([page.waitForResponse((r) => r.request().method() === 'POST'), page.click('button')]);
    if (answer.status() !== 403) fault(service, `a forged post is answered with ${answer.status()}`);
  }
  const kept = await (await fetch(`${service}/v1/plans/${plan.id}`)).json();
  if (kept.revision !== 0) fault(service, 'a forged post has logged something');
  await page.close();
  evil.close();
}

for (const service of services) {
  for (const script of [false, true]) for (const width of [360, 1280]) for (const scheme of ['light', 'dark']) {
    await day(service, width, scheme, script).catch((e) => fault(`${service} at ${width} px, ${scheme}, script ${script}`, String(e).slice(0, 400)));
  }
  await forged(service);
}
await browser.close();
for (const f of faults) console.error(f);
console.log(`${seen.size} days followed on the live sheet; ${faults.length} faults`);
process.exit(faults.length || seen.size !== services.length * 8 ? 1 : 0);

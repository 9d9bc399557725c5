// A household's day, in the time that it takes: a flow engine is told what is due by a
// broker and by a webhook, and posts readings of its own; a cook with a phone does what the
// live sheet says and presses what it offers. SERVICE, BROKER_PORT, HOOK_SECRET and DIR are
// in the environment; MINUTES is how long until the meal.
import fs from 'node:fs';
import path from 'node:path';
import { spawn } from 'node:child_process';
import { chromium } from 'playwright-core';

const { SERVICE, DIR, FLOW_PORT, CHROMIUM } = process.env;
const minutes = Number(process.env.MINUTES || 60);
const heardFile = path.join(DIR, 'heard.jsonl');
const faults = [];
const fault = (what) => { faults.push(what); console.error(what); };
const rest = (ms) => new Promise((done) => setTimeout(done, ms));

const zone = 'America/Chicago';
const at = new Date(Date.now() + minutes * 60e3);
const part = (o) => new Intl.DateTimeFormat('en-CA', { timeZone: zone, hourCycle: 'h23', ...o }).format(at);
const request = { format: 1, name: 'Lunch', guests: 6, grill: { kind: 'kettle', diameter: '22 in' },
  serve: { date: part({ year: 'numeric', month: '2-digit', day: '2-digit' }), time: part({ hour: '2-digit', minute: '2-digit' }), tz: zone },
  dishes: [{ name: 'Burgers', cut: 'burger', weight: '6 oz', count: 4 }] };
const answer = await fetch(`${SERVICE}/v1/plans`, { method: 'POST', headers: { 'Content-Type': 'application/json' }, body: JSON.stringify(request) });
const plan = await answer.json();
if (answer.status !== 201 || !plan.feasible) throw new Error(JSON.stringify(plan.findings || plan));
const url = `${SERVICE}/v1/plans/${plan.id}`;

// The flow engine goes away for a while and comes back: what was due meanwhile must come.
let engine;
const begin = () => { engine = spawn('node_modules/.bin/node-red', ['-u', path.join(DIR, 'flows'), '-s', path.join(DIR, 'settings.js'), 'flow.json'], { env: { ...process.env, PLAN_URL: url, HEARD: heardFile }, stdio: ['ignore', fs.openSync(path.join(DIR, 'engine.log'), 'a'), 'inherit'] }); };
process.on('exit', () => engine && engine.kill('SIGKILL'));
fs.mkdirSync(path.join(DIR, 'flows'), { recursive: true });
fs.copyFileSync('flow.json', path.join(DIR, 'flows', 'flow.json'));
fs.writeFileSync(path.join(DIR, 'settings.js'), `module.exports = {uiPort: ${FLOW_PORT}, uiHost: '127.0.0.1', httpAdminRoot: false, functionExternalModules: true, credentialSecret: false, logging: {console: {level: 'warn'}}};\n`);
begin();
setTimeout(() => engine.kill('SIGKILL'), minutes * 60e3 / 3);
setTimeout(begin, minutes * 60e3 / 3 + 90e3);

const browser = await chromium.launch({ executablePath: CHROMIUM, args: ['--no-sandbox', '--disable-gpu'] });
const page = await browser.newPage({ viewport: { width: 360, height: 740 } });
page.setDefaultTimeout(20000);
const asked = [];
page.on('request', (r) => { if (!/^(data|about):/.test(r.url())) asked.push(r.url()); });
page.on('console', (m) => { if (m.type() === 'error') fault(`the page's console: ${m.text()}`); });
await page.goto(`${url}.html`);
let shot = 0, presses = 0, readings = 0, lastReading = Date.now() + 12 * 60e3; // there is nothing to read before it burns
const said = new Set();
const end = at.getTime() + 4 * 60e3;
while (Date.now() < end) {
  await rest(5000);
  const now = await page.locator('section.now').innerText(); // as the script keeps it; the page is not loaded again
  if (!said.has(now.replace(/It is \d\d:\d\d\./, ''))) {
    said.add(now.replace(/It is \d\d:\d\d\./, ''));
    fs.appendFileSync(path.join(DIR, 'said.txt'), `\n== ${new Date().toISOString()}\n${now}\n`);
    await page.screenshot({ path: path.join(DIR, `phone.${String(shot++).padStart(2, '0')}.png`) });
  }
  const clock = now.match(/It is (\d\d):(\d\d)/);
  const here = new Date().toLocaleTimeString('en-GB', { timeZone: zone, hour: '2-digit', minute: '2-digit' }).split(':');
  const behind = (here[0] * 60 + +here[1]) - (clock[1] * 60 + +clock[2]);
  if (((behind % 1440) + 1440) % 1440 > 2) fault(`the page says ${clock[0]} at ${here.join(':')}`);
  const press = page.locator('section.now form button').first();
  if (await press.count()) {
    await press.click();
    await page.waitForLoadState('load');
    presses++;
  } else if (Date.now() - lastReading > 7 * 60e3) {
    lastReading = Date.now();
    await page.selectOption('#of', 'grate');
    await page.fill('#degrees', '430');
    await page.getByRole('button', { name: 'Log the reading' }).click();
    await page.waitForLoadState('load');
    readings++;
  }
}
for (const u of asked) if (!u.startsWith(SERVICE)) fault(`the page asks for ${u}`);
await browser.close();

// What the house heard, beside what a stream from the beginning says.
const stop = new AbortController();
setTimeout(() => stop.abort(), 5000);
let text = '';
try {
  const stream = await fetch(`${url}/stream?last_event_id=0.0`, { signal: stop.signal });
  for await (const chunk of stream.body) text += Buffer.from(chunk).toString();
} catch { /* it goes on for ever */ }
const told = ['0.0'], steps = [];
for (const event of text.split('\n\n')) {
  const id = event.match(/^id: (.*)$/m), kind = event.match(/^event: (.*)$/m);
  if (!id || !kind || kind[1] === 'plan') continue;
  told.push(id[1]);
  if (kind[1] === 'step') steps.push(id[1]);
}
engine.kill('SIGKILL');
const lines = fs.readFileSync(heardFile, 'utf8').trim().split('\n').map((l) => JSON.parse(l));
const once = (way) => [...new Set(lines.filter((l) => l.way === way).map((l) => l.id))];
const same = (way, want) => { const have = once(way); if (JSON.stringify(have) !== JSON.stringify(want)) fault(`${way} heard ${have}, want ${want}`); return have.length; };
same('webhook', told);
same('broker', steps);
const late = lines.filter((l) => l.at && l.way !== 'display').map((l) => (new Date(l.heard) - new Date(l.at)) / 1000).sort((a, b) => a - b);
const probes = lines.filter((l) => l.way === 'probe');
for (const p of probes) if (p.id !== '200') fault(`a reading of the house was answered with ${p.id}`);
const kept = await (await fetch(url)).json();
console.log(`${minutes} minutes: ${told.length} events by webhook, ${steps.length} steps by the broker, ${once('display').length} states on the display; heard ${late[0]} s to ${late[late.length - 1]} s after they were due (median ${late[late.length >> 1]}; the engine was away for 90 s); ${presses} buttons pressed and ${readings} readings typed on the phone, ${probes.length} readings by the flow, revision ${kept.revision}; ${faults.length} faults`);
if (!presses || !readings || !probes.length || steps.length < 8) fault('hardly anything happened');
process.exit(faults.length ? 1 : 0);

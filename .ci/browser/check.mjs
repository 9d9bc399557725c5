// Looks at the golden sheets and pictures in a browser: labels that overlap or are cut,
// contrast and structure (axe-core), markup (html-validate), pages when printed, and the
// calendars with a parser of another language (ical.js). Screenshots go to OUT.
import fs from 'node:fs';
import path from 'node:path';
import ICAL from 'ical.js';
import { looker } from './look.mjs';

const [golden, out] = process.argv.slice(2);
const days = ['small', 'party', 'overnight', 'crowded'];
const look = await looker(out);
await look.selfTest();

async function sheet(name) {
  const html = fs.readFileSync(path.join(golden, name), 'utf8');
  await look.valid(name, html);
  await look.view(name, html, [[360, 'light'], [360, 'dark'], [1280, 'light'], [1280, 'dark']], { check: look.accessible, letters: true });
  return html;
}

await sheet('odd.html');
for (const day of days) {
  const name = `${day}.html`;
  const html = await sheet(name);
  for (const format of ['A4', 'Letter']) {
    const pages = await look.printed(name, html, format);
    console.log(`${name}: ${pages} pages of ${format}`);
    if (day === 'party' && pages > 2) look.fault(name, `${pages} pages of ${format}, wanted at most 2`);
  }

  for (const picture of ['timeline', 'curves', 'grate']) {
    const file = `${day}.${picture}.svg`;
    const svg = fs.readFileSync(path.join(golden, file), 'utf8');
    const alone = `<!DOCTYPE html><html lang="en"><head><meta charset="utf-8"><title>${file}</title></head><body style="margin:8px">${svg}</body></html>`;
    await look.view(file, alone, [[360, 'light'], [360, 'dark'], [1280, 'light']], { letters: true });
  }

  const calendar = new ICAL.Component(ICAL.parse(fs.readFileSync(path.join(golden, `${day}.ics`), 'utf8')));
  for (const zone of calendar.getAllSubcomponents('vtimezone')) ICAL.TimezoneService.register(zone);
  const plan = JSON.parse(fs.readFileSync(path.join(golden, `${day}.plan.json`), 'utf8'));
  const starts = new Map(calendar.getAllSubcomponents('vevent').map((e) => [e.getFirstPropertyValue('uid'), new ICAL.Event(e).startDate.toJSDate()]));
  for (const step of plan.steps) {
    const at = starts.get(step.id);
    if (!at || Math.abs(at - new Date(step.at)) > 30000) look.fault(`${day}.ics`, `${step.kind} at ${step.at} is ${at}`);
  }
}
await look.done('golden sheets');

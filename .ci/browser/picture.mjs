// Takes a picture of a sheet or an SVG file: node picture.mjs FILE OUT.png [WIDTH]
import path from 'node:path';
import { chromium } from 'playwright-core';

const [file, out, width = '1000'] = process.argv.slice(2);
const browser = await chromium.launch({ executablePath: process.env.CHROMIUM || '/usr/bin/chromium', args: ['--no-sandbox', '--disable-gpu'] });
const page = await browser.newPage({ viewport: { width: Number(width), height: 800 }, colorScheme: 'light' });
if (file.endsWith('.svg')) {
  await page.setContent(`<body style="margin:0"><img src="file://${path.resolve(file)}" style="width:100%"></body>`);
} else {
  await page.goto(`file://${path.resolve(file)}`);
}
await page.screenshot({ path: out, fullPage: true });
await browser.close();

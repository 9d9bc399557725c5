// Runs in the page: names the labels of pictures that touch each other or reach out of
// their picture. A pixel is granted: boxes of text are higher than their letters.
export function textsThatCollide() {
  const found = [];
  for (const svg of document.querySelectorAll('svg')) {
    const frame = svg.getBoundingClientRect();
    const scale = frame.width / svg.viewBox.baseVal.width;
    const boxes = [...svg.querySelectorAll('text')].map((t) => {
      const r = t.getBoundingClientRect();
      const high = r.height * 0.18; // room above and below the letters of a line
      return { text: t.textContent, left: r.left, right: r.right, top: r.top + high, bottom: r.bottom - high };
    });
    for (const [i, a] of boxes.entries()) {
      if (a.left < frame.left - 1 || a.right > frame.right + 1 || a.top < frame.top - 1 || a.bottom > frame.bottom + 1) {
        found.push(`"${a.text}" is cut`);
      }
      for (const b of boxes.slice(i + 1)) {
        const wide = Math.min(a.right, b.right) - Math.max(a.left, b.left);
        const high = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
        if (wide > scale && high > scale) found.push(`"${a.text}" touches "${b.text}"`);
      }
    }
  }
  return found;
}

// Runs in the page: names the labels of pictures whose letters are lower than so many px.
export function lettersTooSmall(least) {
  const found = [];
  for (const svg of document.querySelectorAll('svg')) {
    const frame = svg.getBoundingClientRect();
    if (!frame.width) continue;
    const scale = frame.width / svg.viewBox.baseVal.width;
    for (const t of svg.querySelectorAll('text')) {
      const high = parseFloat(getComputedStyle(t).fontSize) * scale;
      if (high < least) found.push(`"${t.textContent}" is ${high.toFixed(1)} px`);
    }
  }
  return found.slice(0, 3);
}

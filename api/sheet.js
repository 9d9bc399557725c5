// Keeps the page at what is so now: the parts that say it are fetched anew when the plan
// is revised, when a step comes due, and once a minute. What is being typed stays.
(() => {
  const { plan } = document.currentScript.dataset;
  let busy = false, again = false;
  const refresh = async () => {
    if (busy) { again = true; return; }
    busy = true;
    try {
      const answer = await fetch(plan + ".html");
      if (answer.ok) {
        const fresh = new DOMParser().parseFromString(await answer.text(), "text/html");
        for (const part of document.querySelectorAll("[data-live]")) {
          const next = fresh.getElementById(part.id);
          if (!next || part.contains(document.activeElement) || next.innerHTML === part.innerHTML) continue;
          const open = [...part.querySelectorAll("details")].map((d) => d.open);
          next.querySelectorAll("details").forEach((d, i) => { d.open = open[i] || false; });
          part.replaceWith(document.importNode(next, true));
        }
        document.documentElement.dataset.refreshed = String(Date.now());
      }
    } catch { /* the line is down: the next minute may do */ }
    busy = false;
    if (again) { again = false; refresh(); }
  };
  const news = new EventSource(plan + "/stream");
  for (const kind of ["plan", "revision", "step", "deleted"]) news.addEventListener(kind, refresh);
  setInterval(refresh, 60000);
  document.addEventListener("visibilitychange", () => { if (!document.hidden) refresh(); });
})();

"use strict";
// The order of checks with the fewest expected minutes, exact over all sets of checks done (Held and Karp 1962).
const Checks = (() => {
  const data = JSON.parse(document.getElementById("lookup-data").textContent);
  const leastOdds = 0.01, mostChecks = 10, inferFrom = 0.9;

  // Safety and free checks, then the likeliest, in the table's order.
  function chosen(q, shares) {
    const fitting = data.checks.filter(c => (c.types.length === 0 || c.types.includes(q.type)) && (c.complaints.length === 0 || c.complaints.includes(q.kind)));
    // The safety check for every type stands in only where the type has none of its own.
    const own = fitting.some(c => c.component === "safety" && c.types.length > 0);
    const meant = fitting.filter(c => !own || c.component !== "safety" || c.types.length > 0);
    // A component of the shop's own is checked as the row for any component says.
    const any = meant.find(c => c.component === "*");
    const named = new Set(data.checks.map(c => c.component));
    if (any) {
      data.needs.forEach((need, k) => {
        if (shares[k] >= leastOdds && !named.has(need) && need !== "none" && need !== "other_part") {
          const name = need.replaceAll("_", " ");
          meant.push({ ...any, component: need, what: any.what.replace("{component}", name.charAt(0).toUpperCase() + name.slice(1)) });
        }
      });
    }
    const whole = new Map();
    meant.forEach(c => whole.set(c.component, (whole.get(c.component) || 0) + c.share));
    const all = meant.map((check, row) => {
      const need = data.needs.indexOf(check.component);
      return { check, row, odds: (need < 0 ? 0 : shares[need]) * check.share / whole.get(check.component) };
    });
    const likely = all.filter(c => !c.check.first && c.odds >= leastOdds).sort((a, b) => b.odds - a.odds || a.row - b.row).slice(0, mostChecks);
    return [...all.filter(c => c.check.first), ...likely.sort((a, b) => a.row - b.row)];
  }

  function order(q, list, opens) {
    const first = list.filter(c => c.check.first), rest = list.filter(c => !c.check.first), n = rest.length, full = (1 << n) - 1;
    const infer = list.reduce((sum, c) => sum + c.odds, 0) >= inferFrom;
    const open = new Set(first.map(c => c.check.opening).filter(o => opens[o]));
    const opening = rest.map(c => opens[c.check.opening] && !open.has(c.check.opening) ? opens[c.check.opening].minutes : 0);
    const together = rest.map(c => !opens[c.check.opening] ? 0 : rest.reduce((mask, o, i) => mask | (o.check.opening === c.check.opening ? 1 << i : 0), 0));
    const start = 1 - first.reduce((sum, c) => sum + c.odds * c.check.finds, 0);
    const best = new Array(full + 1).fill(0), choice = new Array(full + 1).fill(-1);
    for (let done = full - 1; done >= 0; done--) {
      best[done] = Infinity;
      let reached = start;
      for (let i = 0; i < n; i++) reached -= done & (1 << i) ? rest[i].odds * rest[i].check.finds : 0;
      reached = Math.max(0, reached);
      for (let i = 0; i < n; i++) {
        if (done & (1 << i)) continue;
        const after = done | (1 << i);
        const minutes = infer && after === full ? 0 : reached * (rest[i].check.minutes + (together[i] & done ? 0 : opening[i])) + best[after];
        if (minutes < best[done] - 1e-12) [best[done], choice[done]] = [minutes, i];
      }
    }
    const steps = [...first];
    for (let done = 0; done !== full; done |= 1 << choice[done]) steps.push(rest[choice[done]]);
    return steps;
  }

  // Each step with its chance and the opening work to be done just before it.
  function plan(q, shares) {
    const list = chosen(q, shares), opens = data.openings[q.type] || {}, open = new Set();
    return order(q, list, opens).map(step => {
      const name = step.check.opening, work = opens[name] && !open.has(name) ? opens[name] : null;
      if (work) open.add(name);
      return { check: step.check, odds: step.odds, opening: work ? name : null, work };
    });
  }

  return { plan };
})();

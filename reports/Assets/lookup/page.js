"use strict";
(() => {
  const data = JSON.parse(document.getElementById("lookup-data").textContent);
  const el = id => document.getElementById(id);
  const question = { picked: null, kindPicked: null };
  const words = stored => stored === "none" ? "no part needed" : stored === "other_part" ? "another part" : stored.replaceAll("_", " ");
  const compact = text => text.toUpperCase().replace(/[^A-Z0-9]/g, "");
  const alike = text => compact(text).replace(/O/g, "0").replace(/[IL]/g, "1");

  const make = (tag, text, className) => {
    const node = document.createElement(tag);
    if (text) node.textContent = text;
    if (className) node.className = className;
    return node;
  };

  window.lookupOdds = q => Odds.of(q);
  window.lookupKind = (text, type) => Words.kind(text, type);
  window.lookupChecks = q => Checks.plan(q, Odds.of(q)).map(s => s.check.what);

  function findModels(typed) {
    const key = alike(typed);
    if (key.length < 2) return [];
    const families = new Map(data.models.map(m => [m.family, { number: "", family: m.family, type: m.type, brand: m.brand }]));
    const rank = m => {
      const own = alike(m.number || m.family), full = alike((m.brand || "") + (m.number || m.family));
      return own === key ? 0 : own.startsWith(key) ? 1 : own.includes(key) ? 2 : full.includes(key) ? 3 : 9;
    };
    return [...families.values(), ...data.models].map(m => [rank(m), m]).filter(r => r[0] < 9)
      .sort((a, b) => a[0] - b[0] || (a[1].number < b[1].number ? -1 : 1)).slice(0, 8).map(r => r[1]);
  }

  // A number typed in full needs no picking.
  const exact = typed => {
    const key = compact(typed), same = key.length < 3 ? [] : data.models.filter(m => compact(m.number) === key);
    return same.length > 0 && same.every(m => m.family === same[0].family) ? same[0] : null;
  };

  // A variant that is new is answered from the one family whose models have its base.
  function findBase(typed) {
    const key = alike(typed);
    for (let length = key.length - 1; length >= Math.max(4, key.length - 4); length--) {
      const start = key.slice(0, length), sisters = data.models.filter(m => alike(m.number).startsWith(start));
      if (sisters.length === 0) continue;
      const first = sisters[0];
      return /[0-9]/.test(start) && sisters.every(m => m.family === first.family) ? [{ number: "", family: first.family, type: first.type, brand: first.brand, base: true }] : [];
    }
    return [];
  }

  function findKinds(typed, type) {
    const asked = typed.toLowerCase().match(/[\p{L}\p{N}]{2,}/gu) || [];
    const open = data.kinds.filter(k => !type || k.types.length === 0 || k.types.includes(type));
    if (asked.length === 0) return type ? open.slice(0, 12) : [];
    const score = k => {
      const known = k.words.split(" ");
      return asked.reduce((sum, a) => sum + (known.some(w => w.startsWith(a) || (w.length >= 4 && a.startsWith(w))) ? 1 : 0), 0);
    };
    return open.map((k, i) => [score(k), i, k]).filter(s => s[0] > 0).sort((a, b) => b[0] - a[0] || a[1] - b[1]).slice(0, 8).map(s => s[2]);
  }

  function choices(place, items, label, picked, pick) {
    const list = el(place);
    list.replaceChildren(...items.map(item => {
      const button = make("button", label(item));
      button.type = "button";
      button.setAttribute("aria-pressed", String(picked(item)));
      button.addEventListener("click", () => pick(item));
      return button;
    }));
  }

  const type = () => (question.picked && question.picked.type) || el("type").value || "unknown";

  function listModels() {
    const label = m => [m.brand, m.number || "family " + m.family, m.number ? "(" + m.family + ")" : "", m.base ? "(starts like " + el("model").value.trim() + ")" : "", m.type].filter(Boolean).join(" ");
    const listed = findModels(el("model").value);
    choices("model-list", question.picked ? [question.picked] : listed.length > 0 ? listed : findBase(el("model").value), label, m => m === question.picked, m => {
      question.picked = question.picked === m ? null : m;
      if (question.picked && !m.base) el("model").value = m.number || m.family;
      refresh();
    });
  }

  const knownType = () => type() === "unknown" ? "" : type();

  // The kind picked, else what the words typed mean; "other" is an answer too: then the words alone count.
  const kindNow = () => question.kindPicked ? question.kindPicked.kind : Words.kind(el("complaint").value, knownType());

  function listKinds() {
    const now = kindNow(), found = findKinds(el("complaint").value, knownType());
    const read = data.kinds.filter(k => k.kind === now);
    const items = question.kindPicked ? [question.kindPicked] : [...read, ...found.filter(k => k.kind !== now)].slice(0, read.length ? 4 : 8);
    choices("complaint-list", items, k => words(k.kind), k => k.kind === now, k => {
      question.kindPicked = question.kindPicked === k ? null : k;
      refresh();
    });
  }

  function part(p) {
    const line = make("p", "", "part");
    line.append(make("span", (p.quantity > 1 ? p.quantity + " x " : "") + p.number, "number"));
    const rest = [p.text, p.made ? "" : "no longer made", p.cost || "",
      p.seen > 0 ? "fitted " + p.seen + " times on the family" : "listed, not yet fitted here",
      p.old.length ? "replaces " + p.old.join(", ") : "",
      p.vans.length ? p.vans.map(v => "van " + v.van + " has " + v.pieces).join(", ") : "on no van"];
    line.append(" " + rest.filter(Boolean).join("; "));
    return line;
  }

  // The part most used on this very model comes first, then the one most used on the family.
  function partsFor(q, need) {
    const used = (q.model && data.onModel[q.model]) || {};
    return (data.parts[q.family + "/" + need] || []).map((p, i) => [p, i]).sort((a, b) =>
      (b[0].made - a[0].made) || ((used[b[0].number] || 0) - (used[a[0].number] || 0)) || (a[1] - b[1])).map(r => r[0]);
  }

  function bar(share) {
    const box = make("div", "", "bar"), ns = "http://www.w3.org/2000/svg";
    const svg = document.createElementNS(ns, "svg"), rect = document.createElementNS(ns, "rect");
    svg.setAttribute("viewBox", "0 0 100 8");
    svg.setAttribute("preserveAspectRatio", "none");
    svg.setAttribute("aria-hidden", "true");
    rect.setAttribute("width", (share * 100).toFixed(1));
    rect.setAttribute("height", "8");
    rect.setAttribute("fill", "#0b4f7a");
    svg.append(rect);
    box.append(svg);
    return box;
  }

  // Odds from which a part brought for nothing costs less than the second visit it saves.
  function bringFrom(first) {
    const c = data.costs, wrong = c.handling + (first && first.price ? first.price : 0) * (first && first.returnable ? c.returnShare : c.lostShare);
    return wrong / (wrong + c.secondVisit);
  }

  function showNeeds(out, q, shares) {
    const ranked = shares.map((p, k) => [p, k]).filter(r => r[0] >= 0.02).sort((a, b) => b[0] - a[0] || a[1] - b[1]).slice(0, 8);
    out.append(make("h3", "What it will need"));
    for (const [p, k] of ranked) {
      const need = data.needs[k], fits = partsFor(q, need), isPart = need !== "none" && need !== "other_part";
      const box = make("div", "", "need"), head = make("p");
      head.append(make("span", Math.round(p * 100) + " %", "odds"), " " + words(need) + (p >= 0.4 ? ", usual" : p >= 0.1 ? ", possible" : ", rare"));
      if (isPart && p >= bringFrom(fits[0])) head.append(" ", make("span", "bring it", "bring"));
      box.append(head, bar(p));
      fits.slice(0, 2).forEach(x => box.append(part(x)));
      out.append(box);
    }
    const rest = 1 - ranked.reduce((sum, r) => sum + r[0], 0);
    if (rest >= 0.005) out.append(make("p", Math.round(rest * 100) + " % anything else", "basis"));
  }

  function showChecks(out, q, shares) {
    const steps = Checks.plan(q, shares), list = make("ol");
    if (steps.length === 0) return;
    const cautions = steps.flatMap(s => [s.check.component === "safety" ? s.check.what : "", s.check.caution, s.work ? s.work.caution : ""]).filter(Boolean);
    out.append(make("h3", "Cautions"));
    [...new Set(cautions)].forEach(c => out.append(make("p", c, "caution")));
    out.append(make("h3", "Check in this order"));
    for (const s of steps) {
      const item = make("li");
      if (s.work) item.append(make("div", "open: " + s.opening + " (" + s.work.minutes + " min)", "open"));
      item.append(make("div", s.check.what + " (" + s.check.minutes + " min" + (s.check.tool ? ", " + s.check.tool : "") + (s.odds > 0 ? ", " + Math.round(s.odds * 100) + " %" : "") + ")"));
      if (s.check.good) item.append(make("div", "good: " + s.check.good, "basis"));
      if (s.check.bad) item.append(make("div", "bad: " + s.check.bad, "basis"));
      list.append(item);
    }
    out.append(list);
  }

  // "2021-05" or "2021": the middle of that month or year, and the age it means today.
  function builtOn(text, today) {
    const found = /^(\d{4})(?:-(\d{1,2}))?$/.exec(text.trim());
    if (!found) return null;
    const month = found[2] ? Number(found[2]) : 7, day = found[2] ? 15 : 1;
    const built = Date.UTC(Number(found[1]), month - 1, day), years = (today - built) / 86400000 / 365.25;
    return month >= 1 && month <= 12 && years >= 0 && years <= 80
      ? { made: found[2] ? found[1] + "-" + String(month).padStart(2, "0") : null, age: years } : null;
  }

  function asked() {
    const picked = question.picked, typed = el("complaint").value.trim(), kind = kindNow(), now = new Date();
    const built = builtOn(el("built").value, now.getTime());
    const age = el("age").value === "" ? null : Number(el("age").value);
    const days = el("earlier").value === "" ? null : Math.round(Number(el("earlier").value));
    return {
      type: type(), brand: picked && picked.brand, family: picked && picked.family, model: picked && picked.number,
      kind, text: typed || words(kind), code: Words.plainCode(el("code").value) || Words.code(typed), customer: el("customer").value,
      age: age !== null && age >= 0 && age <= 80 ? age : built ? built.age : null,
      made: age === null && built ? built.made : null, month: now.getMonth() + 1,
      earlier: days !== null && days >= 1 ? [{ daysAgo: days, need: el("earlier-need").value || null, kind: el("earlier-same").checked ? kind : "" }] : []
    };
  }

  function answer() {
    const out = el("answer"), picked = question.picked;
    out.replaceChildren();
    if (!picked && type() === "unknown" || kindNow() === "none") {
      out.append(make("p", "Pick a model (or an appliance) and say what is wrong.", "basis"));
      return;
    }
    const q = asked(), shares = Odds.of(q);
    const about = [picked && picked.brand, picked ? picked.number || "family " + picked.family : "", q.type, q.age === null ? "age unknown" : Math.round(q.age * 10) / 10 + " years",
      words(q.kind), q.code ? "code " + q.code : ""];
    out.append(make("p", about.filter(Boolean).join(", ") + ".", "basis"));
    if (picked && picked.base) out.append(make("p", "This model is not in your lists. The answer is for family " + picked.family + ", whose model numbers start the same way.", "basis"));
    if (q.kind === "other") out.append(make("p", "We do not recognize this complaint, so the odds rest on its words and on the appliance. Pick a complaint for better odds.", "basis"));
    if (!data.weights) out.append(make("p", "Odds of the usual call of this family; the shop's own computer also weighs age, words and earlier visits.", "basis"));
    out.append(make("p", "Before opening the cabinet: disconnect power and water, and prove it dead.", "caution"));
    if (!shares) {
      out.append(make("p", "Too few jobs to say."));
      return;
    }
    showNeeds(out, q, shares);
    showChecks(out, q, shares);
  }

  function refresh() {
    listModels();
    listKinds();
    answer();
  }

  el("model").addEventListener("input", () => { question.picked = exact(el("model").value); refresh(); });
  el("complaint").addEventListener("input", () => { question.kindPicked = null; refresh(); });
  el("type").addEventListener("change", refresh);
  ["age", "code", "built", "earlier", "earlier-need", "earlier-same", "customer"].forEach(id => el(id).addEventListener("input", refresh));
  el("clear").addEventListener("click", () => {
    el("question").reset();
    question.picked = question.kindPicked = null;
    refresh();
    el("model").focus();
  });
  for (const [field, list] of [["model", "model-list"], ["complaint", "complaint-list"]]) {
    el(field).addEventListener("keydown", event => {
      if (event.key !== "Enter") return;
      event.preventDefault();
      const first = el(list).querySelector("button[aria-pressed=false]");
      if (first) first.click();
    });
  }
  el("question").addEventListener("submit", event => event.preventDefault());
  const days = Math.floor((Date.now() - Date.parse(data.asOf)) / 86400000);
  if (days > 45) {
    el("stale").hidden = false;
    el("stale").textContent = "This data is " + days + " days old. Odds, prices and van contents may have changed. Ask the office for a newer page.";
  }
  refresh();
})();

// The vat day: a countdown that survives sleep and reload, and touches that nobody loses.
// Every page works without it. Nothing here needs a secure context: a home network is plain http.

const FIRST_WAIT = 1000;
const LONGEST_WAIT = 30000;
const page = document.querySelector('[data-vat]');
const KEY = 'trier-vat:' + page.dataset.vat;
const store = {
  get(key) { try { return JSON.parse(localStorage.getItem(key)); } catch { return null; } },
  set(key, value) { try { localStorage.setItem(key, JSON.stringify(value)); return true; } catch { return false; } },
  drop(key) { try { localStorage.removeItem(key); } catch { /* nothing was kept */ } },
};

// ---- the host's clock: absolute times only, so a phone that slept or whose clock jumped is right again ----

let skew = Date.parse(page.dataset.now) - Date.now();
let wall = Date.now();
let steady = performance.now();
const hostNow = () => Date.now() + skew;

async function askClock() {
  try {
    const sent = performance.now();
    const answer = await fetch('/makes/now', { cache: 'no-store', credentials: 'same-origin' });
    if (!answer.ok || answer.redirected) return;
    const host = Date.parse(await answer.text());
    if (Number.isFinite(host)) skew = host + (performance.now() - sent) / 2 - Date.now();
    tick();
  } catch { /* away: the last known difference has to do */ }
}

function watchForJumps() {
  const jumped = Math.abs(Date.now() - wall - (performance.now() - steady)) > 3000;
  // A phone that slept looks like a clock that jumped. Without the host to ask, the wall clock is believed: sleep is the commoner.
  if (jumped) askClock();
  [wall, steady] = [Date.now(), performance.now()];
}

// ---- the step in hand; a split vat has one in each part ----

const lanes = () => [...page.querySelectorAll('.vat-lane')];
const stepsOf = (lane) => [...lane.querySelectorAll('.vat-step')];
const inHand = (lane) => stepsOf(lane).find((step) => !step.hidden);
const pad = (number) => String(number).padStart(2, '0');
const clockWords = (time) => { const at = new Date(time + zone()); return pad(at.getUTCHours()) + ':' + pad(at.getUTCMinutes()); };
// Times are told in the host's zone: what the server wrote beside the first due time says how far off UTC that is.
function zone() {
  const shown = page.dataset.zone;
  return shown === undefined ? -new Date().getTimezoneOffset() * 60000 : Number(shown) * 60000;
}

function lengthWords(minutes) {
  const rounded = minutes < 10 ? Math.round(minutes * 10) / 10 : Math.round(minutes);
  if (rounded < 120) return numberWords(rounded, 1) + ' min';
  const hours = Math.floor(rounded / 60);
  if (hours >= 72 && rounded % 1440 === 0) return rounded / 1440 + ' days';
  return rounded % 60 === 0 ? hours + ' h' : hours + ' h ' + (rounded % 60) + ' min';
}

function numberWords(value, decimals) {
  const words = decimals < 0 ? value.toFixed(-decimals) : String(Number(value.toFixed(decimals)));
  return words.replace('.', page.dataset.mark || ',');
}

function leftWords(step) {
  const minutes = Math.ceil((Date.parse(step.dataset.due) - hostNow()) / 60000);
  return minutes > 1 ? lengthWords(minutes) + ' to go' : minutes >= 0 ? 'now' : lengthWords(-minutes) + ' past the plan';
}

const write = (place, words) => { if (place && place.textContent !== words) place.textContent = words; };

function tick() {
  for (const lane of lanes()) {
    const step = inHand(lane);
    const tab = page.querySelector(`[data-to="${lane.dataset.lane}"] [data-part-now]`);
    if (!step || !step.dataset.due) { write(tab, 'done'); continue; }
    const words = leftWords(step);
    write(tab, step.dataset.heading + ', ' + words);
    if (lane.hidden) continue;
    const due = Date.parse(step.dataset.due);
    const start = Date.parse(step.dataset.rennet || step.dataset.start);
    write(step.querySelector('[data-left]'), words[0].toUpperCase() + words.slice(1) + '.');
    const fill = step.querySelector('[data-fill]');
    if (fill) fill.style.width = (due > start ? Math.min(100, Math.max(0, 100 * (hostNow() - start) / (due - start))) : 100) + '%';
    const clock = step.querySelector('[data-clock]');
    if (clock && step.dataset.moved) clock.textContent = clockWords(due);
  }
}

// Going over to another part needs no host: its steps are in the page.
function goTo(part, link) {
  for (const lane of lanes()) lane.hidden = lane.dataset.lane !== part;
  for (const tab of page.querySelectorAll('[data-to]')) tab === link ? tab.setAttribute('aria-current', 'true') : tab.removeAttribute('aria-current');
  history.replaceState(null, '', link.href);
  tick();
}

// ---- what went otherwise, said at once: the page knows the aims of the step and needs no host for it ----

const numberIn = (field) => (field?.value.trim() ? Number(field.value.trim().replace(',', '.')) : NaN);

function deviations(step, form, at) {
  const told = [];
  for (const aim of JSON.parse(step.dataset.aims || '[]')) {
    const start = Date.parse(step.dataset.start);
    const clock = { time: (at - start) / 60000, cut: (at - start) / 60000, floc: (at - Date.parse(step.dataset.rennet)) / 60000 };
    const value = aim.key in clock ? clock[aim.key] : numberIn(form.elements[aim.key]);
    const gap = Math.abs(value - aim.aim);
    if (!Number.isFinite(value) || gap <= aim.slack + 1e-9) continue;
    const more = value > aim.aim;
    const shown = (number) => numberWords(number, aim.decimals) + aim.after;
    const words = aim.key === 'cut' ? lengthWords(gap) + (more ? ' later' : ' earlier') + ' than planned'
      : aim.key === 'time' ? lengthWords(gap) + (more ? ' longer' : ' shorter') + ' than planned'
      : aim.key === 'floc' ? 'flocculation after ' + lengthWords(value) + ', ' + lengthWords(gap) + (more ? ' later' : ' earlier') + ' than planned'
      : aim.before + shown(value) + ', ' + shown(gap) + (more ? ' above' : ' below') + ' the aim of ' + shown(aim.aim);
    const moves = aim.key === 'floc' ? ' The cut moves with it, to ' + clockWords(Date.parse(step.dataset.rennet) + value * Number(step.dataset.times) * 60000) + '.' : '';
    const leads = more ? (value >= aim.high ? aim.farAbove : aim.above) : value < aim.low ? aim.farBelow : aim.below;
    told.push(step.dataset.heading + ': ' + words + '. ' + leads + moves);
  }
  const ph = numberIn(form.elements.pH);
  const hours = (at - Date.parse(page.dataset.begins)) / 3600000;
  const slow = JSON.parse(page.dataset.slow).find((one) => hours >= one.from && ph > one.most);
  if (slow) told.unshift(slow.say.replace('{h}', Math.floor(hours)).replace('{v}', numberWords(ph, -2)));
  return told;
}

function sayOtherwise(told) {
  const place = page.querySelector('[data-said]');
  const look = page.querySelector('[data-said-look]');
  if (!place || !look) return;
  place.replaceChildren();
  if (!told.length) return;
  const box = look.content.cloneNode(true);
  const line = box.querySelector('.note-line');
  for (const words of told.slice(1).reverse()) {
    const next = line.cloneNode(true);
    next.textContent = words.trim();
    line.after(next);
  }
  line.textContent = told[0].trim();
  place.append(box);
}

// The time typed at a step, as the host reads it: of the host's day, and the latest such moment not more than half a day ahead.
function typedTime(form, at) {
  const parts = /^(\d{1,2})[:.](\d{2})$/.exec(form.elements.when?.value.trim() ?? '');
  if (!parts) return at;
  const day = new Date(at + zone());
  const moment = Date.UTC(day.getUTCFullYear(), day.getUTCMonth(), day.getUTCDate(), Number(parts[1]), Number(parts[2])) - zone();
  return moment > at + 12 * 3600000 ? moment - 24 * 3600000 : moment;
}

// An odd reading is asked about first.
const asks = (form) => [...form.querySelectorAll('[data-doubts]')].some((field) => {
  const text = field.value.trim();
  const value = numberIn(field);
  const doubt = JSON.parse(field.dataset.doubts).find(({ from, to }) => value < from || value > to);
  const sure = form.elements['sure-' + field.name];
  if (!doubt || sure.value === text) return false;
  sure.value = text;
  sayOtherwise([doubt.ask.replace('{v}', text)]);
  scrollTo(0, 0);
  return true;
});

// ---- drafts: what is typed at a step stays until it is sent ----

const draftKey = (form) => KEY + ':draft:' + form.dataset.send;
const typed = (form) => [...form.elements].filter((field) => field.name && field.type !== 'hidden' && field.tagName !== 'BUTTON');

function keepDraft(form) {
  store.set(draftKey(form), typed(form).map((field) => [field.name, field.value]));
}

function restoreDraft(form) {
  for (const [name, value] of store.get(draftKey(form)) ?? []) {
    const field = typed(form).find((one) => one.name === name);
    if (field && value && (!field.value || field.tagName === 'SELECT')) {
      field.value = value;
      const box = field.closest('details');
      if (box) box.open = true;
    }
  }
}

// ---- touches: kept first, sent in order, each under its own id until the host has answered ----

const outbox = () => store.get(KEY + ':out') ?? [];
const keep = (sends) => (sends.length ? store.set(KEY + ':out', sends) : (store.drop(KEY + ':out'), true));

function say(words) {
  const place = document.querySelector('[data-draft-state]');
  if (place && place.textContent !== words) place.textContent = words;
}

function pause(attempt) {
  return new Promise((done) => {
    const end = () => { clearTimeout(timer); removeEventListener('online', end); done(); };
    const timer = setTimeout(end, Math.min(LONGEST_WAIT, FIRST_WAIT * 2 ** attempt));
    addEventListener('online', end);
  });
}

async function post(send) {
  try {
    const answer = await fetch(send.url, { method: 'POST', body: send.body, credentials: 'same-origin', headers: { 'Content-Type': 'application/x-www-form-urlencoded;charset=UTF-8' } });
    return answer.status >= 500 || answer.status === 429 || answer.status === 408 ? null : answer;
  } catch {
    return null;
  }
}

let sending = false;
async function sendAll() {
  if (sending) return;
  sending = true;
  let attempt = 0;
  let refused = null;
  let stopped = false;
  while (outbox().length && !stopped) {
    const [first] = outbox();
    const answer = await post(first);
    if (!answer) {
      const many = outbox().length;
      say(many === 1 ? 'The Wi-Fi is away. What you touched is kept on this phone and goes out by itself.' : `The Wi-Fi is away. Your ${many} touches are kept on this phone and go out by themselves.`);
      await pause(attempt++);
      continue;
    }
    attempt = 0;
    if (answer.status === 422) refused = { send: first, html: await answer.text(), stale: false };
    else if (!answer.ok || new URL(answer.url).pathname.startsWith('/sign-in')) stopped = true;
    else if (refused) refused.stale = true;
    if (!stopped) keep(outbox().slice(1));
  }
  sending = false;
  if (stopped) { say('The host did not take it. What you touched is kept on this phone: load the page again, and sign in if it asks.'); return; }
  if (!refused) { location.replace('/makes/' + page.dataset.vat + location.search); return; }
  // What was touched after the refused one is in by now; asked once more, the host says why on a page that knows it.
  if (refused.stale) refused.html = await post(refused.send).then((answer) => answer?.text() ?? refused.html);
  show(refused.html);
}

// The page that says why is the host's own; its words are read, nothing typed is lost.
function show(html) {
  const answer = new DOMParser().parseFromString(html, 'text/html').querySelector('[data-vat]');
  if (!answer) { location.reload(); return; }
  page.replaceChildren(...answer.childNodes);
  page.dataset.now = answer.dataset.now;
  page.querySelector('[role=alert]')?.focus();
  begin();
}

function goOn(step, at) {
  const steps = stepsOf(step.closest('.vat-lane'));
  const next = steps[steps.indexOf(step) + 1];
  step.hidden = true;
  if (!next) return;
  next.hidden = false;
  if (next.dataset.step !== 'end') {
    const takes = Number(next.dataset.takes || 0) * 60000;
    let start = at;
    let due = at + takes;
    if (step.dataset.part === 'start') {
      next.dataset.rennet = new Date(at).toISOString();
      due = at + Number(next.dataset.floc) * 60000;
    } else if (step.dataset.kind === 'renneting') {
      start = Date.parse(step.dataset.rennet);
      due = next.dataset.kind === 'cut' ? start + (at - start) * Number(step.dataset.times) : due;
    } else if (step.dataset.kind === 'cut') {
      start = at + Number(step.dataset.takes || 0) * 60000;
      due = start + takes;
    } else if (next.dataset.kind === 'cut' || next.dataset.part === 'start') {
      due = at;
    }
    next.dataset.start = new Date(start).toISOString();
    next.dataset.due = new Date(due).toISOString();
    next.dataset.moved = 'yes';
  }
  document.querySelector('.undobar')?.remove();
  tick();
  next.querySelector('h1')?.setAttribute('tabindex', '-1');
  next.querySelector('h1')?.focus({ preventScroll: true });
  scrollTo(0, 0);
}

// Touches of this page that the host has not answered yet are shown as done after a reload, too.
function replay() {
  for (const send of outbox()) {
    const form = document.querySelector(`form[data-send="${CSS.escape(send.form)}"]`);
    const step = form?.closest('.vat-step');
    if (step && !step.hidden) goOn(step, send.at);
  }
}

function begin() {
  for (const tab of page.querySelectorAll('[data-to]')) tab.addEventListener('click', (event) => { event.preventDefault(); goTo(tab.dataset.to, tab); });
  const first = page.querySelector('[data-clock]');
  if (first) {
    const [hours, minutes] = first.textContent.split(':').map(Number);
    const utc = new Date(first.dateTime);
    let off = hours * 60 + minutes - utc.getUTCHours() * 60 - utc.getUTCMinutes();
    if (off > 14 * 60) off -= 24 * 60;
    if (off <= -12 * 60) off += 24 * 60;
    page.dataset.zone = off;
  }
  for (const form of document.querySelectorAll('form[data-send]')) {
    restoreDraft(form);
    form.addEventListener('input', () => keepDraft(form));
    form.addEventListener('submit', (event) => {
      event.preventDefault();
      if (asks(form)) return;
      const at = hostNow();
      const when = typedTime(form, at);
      const step = form.closest('.vat-step');
      form.querySelector('[data-at]').value = new Date(at).toISOString();
      const body = new URLSearchParams(new FormData(form, event.submitter)).toString();
      const sends = [...outbox(), { url: form.action, body, at: when, form: form.dataset.send }];
      if (!keep(sends)) { form.submit(); return; }
      store.drop(draftKey(form));
      sayOtherwise(deviations(step, form, when));
      goOn(step, when);
      sendAll();
    });
  }
  replay();
  tick();
}

begin();
setInterval(() => { watchForJumps(); tick(); }, 1000);
const wake = () => { if (!document.hidden) askClock(); };
for (const event of ['pageshow', 'online', 'focus']) addEventListener(event, wake);
document.addEventListener('visibilitychange', wake);
if (outbox().length) sendAll();

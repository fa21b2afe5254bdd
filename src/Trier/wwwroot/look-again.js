// Work is going on for this page. Looks whether it is done, and only then shows the page anew: whoever reads is not thrown about, and what somebody is typing stays.

const WAIT = 3000;
const waiting = document.querySelector('[data-look-again]');
const page = waiting.dataset.lookAgain;
waiting.textContent = 'This page shows them by itself once they are ready.';

const typing = () => [...document.querySelectorAll('input, textarea')].some(field => field.type !== 'hidden' && (field.value !== field.defaultValue || field.checked !== field.defaultChecked));

async function look() {
  try {
    const answer = await fetch(page, { cache: 'no-store', credentials: 'same-origin' });
    if (answer.ok) {
      const now = new DOMParser().parseFromString(await answer.text(), 'text/html');
      if (!now.querySelector('[data-look-again]') && !typing()) return location.assign(page);
      const soFar = now.querySelector('[data-so-far]')?.textContent ?? '100';
      document.querySelector('[data-so-far]')?.replaceChildren(soFar);
    }
  } catch { /* the laptop is away or starting anew: the next look will tell */ }
  setTimeout(look, WAIT);
}

setTimeout(look, WAIT);

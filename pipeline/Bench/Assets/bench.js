'use strict';
for (const button of document.querySelectorAll('button[data-answer]')) {
  button.hidden = false;
  button.addEventListener('click', () => {
    const input = document.getElementsByName(button.dataset.answer)[0];
    input.value = button.textContent;
    input.focus();
  });
}
for (const button of document.querySelectorAll('button[data-print]')) {
  button.hidden = false;
  button.addEventListener('click', () => window.print());
}
const drop = document.querySelector('[data-drop]');
if (drop) {
  const input = drop.querySelector('input[type=file]');
  for (const kind of ['dragover', 'dragleave', 'drop']) {
    drop.addEventListener(kind, (event) => {
      event.preventDefault();
      drop.classList.toggle('over', kind === 'dragover');
    });
  }
  drop.addEventListener('drop', (event) => {
    if (event.dataTransfer.files.length > 0) {
      input.files = event.dataTransfer.files;
      drop.requestSubmit();
    }
  });
}
const progress = document.querySelector('[data-progress]');
if (progress) {
  const events = new EventSource('/run/progress');
  events.onmessage = (event) => {
    const state = JSON.parse(event.data);
    if (!state.running) {
      events.close();
      location.reload();
      return;
    }
    progress.querySelector('progress').value = state.percent;
    progress.querySelector('[data-percent]').textContent = state.percent;
    progress.querySelector('[data-step]').textContent = state.step;
  };
}

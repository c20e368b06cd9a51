// Times on the page stand in the host's zone; here the viewer's own is written beside, where it differs.

/** Adds the viewer's own time to every `time[data-own]` of the page; the attribute holds "{time} your time". */
export function showLocalTimes(page: Document): void {
  for (const element of page.querySelectorAll('time[data-own]')) {
    if (!(element instanceof HTMLTimeElement)) continue;
    const moment = new Date(element.dateTime);
    const sentence = element.dataset.own ?? '';
    const minutes = -moment.getTimezoneOffset();
    if (Number.isNaN(moment.getTime()) || String(minutes) === element.dataset.offset) continue;
    const language = page.documentElement.lang || undefined;
    const time = new Intl.DateTimeFormat(language, {
      weekday: 'long',
      hour: '2-digit',
      minute: '2-digit',
      // As the host's time beside it: a plain "en" would write 02:33 AM.
      hourCycle: 'h23',
    }).format(moment);
    element.after(` ${sentence.replace('{time}', time)}`);
  }
}

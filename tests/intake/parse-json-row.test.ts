import { describe, expect, test } from 'vitest';
import { cellsUnder, parseJsonRow } from '#lib/intake/parse-json-row.ts';

describe('[A20] a line of JSON Lines', () => {
  test('[A20] text, numbers and yes or no become cells under the heads', () => {
    const read = parseJsonRow('{"author":"Ann","likes":3,"isReply":false,"text":"Rh1","more":{"x":1}}', 2);
    expect(read.ok ? cellsUnder(['text', 'author', 'likes', 'isReply', 'gone'], read.value) : null).toEqual([
      'Rh1',
      'Ann',
      '3',
      'false',
      '',
    ]);
  });

  test('[A20] a key named __proto__ is a key like any other', () => {
    const read = parseJsonRow('{"__proto__":"x","constructor":"y","text":"Rh1"}', 2);
    expect(read.ok ? [...read.value] : null).toEqual([
      ['__proto__', 'x'],
      ['constructor', 'y'],
      ['text', 'Rh1'],
    ]);
    expect(Object.keys(Object.prototype)).toEqual([]);
  });

  test('[A20] nested 100,000 deep: no crash, a row or a reason', () => {
    const deep = `{"text":"Rh1","x":${'['.repeat(100_000)}${']'.repeat(100_000)}}`;
    const read = parseJsonRow(deep, 2);
    expect(read.ok ? [...read.value.keys()] : read.reason.code).toSatisfy(
      (found: unknown) => found === 'not-json' || (Array.isArray(found) && found.join() === 'text'),
    );
  });

  test('[A20] what is no object is refused with its row', () => {
    expect(parseJsonRow('[1]', 4)).toEqual({ ok: false, reason: { code: 'not-an-object', row: 4 } });
    expect(parseJsonRow('null', 4)).toEqual({ ok: false, reason: { code: 'not-an-object', row: 4 } });
    expect(parseJsonRow('{"text":', 5)).toEqual({ ok: false, reason: { code: 'not-json', row: 5 } });
  });
});

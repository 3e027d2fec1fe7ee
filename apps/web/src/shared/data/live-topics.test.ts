import { describe, expect, it } from 'vitest';
import { readNews, topicOf, topicsOf } from './live-topics.ts';

describe('topicOf', () => {
  it('is the first word of a query of the API', () => {
    expect(topicOf([['job', 'byNumber'], { input: { number: 2417 }, type: 'query' }])).toBe('job');
    expect(topicOf([['part', 'driver', 'list'], { type: 'query' }])).toBe('part');
  });
  it('is the noun of a whole list, and the name of anything else', () => {
    expect(topicOf(['whole-list', 'part.driver', false])).toBe('part');
    expect(topicOf(['whole-list', 'vehicleModel', false])).toBe('vehicleModel');
    expect(topicOf(['record-of-changes', ''])).toBe('record-of-changes');
  });
});

describe('topicsOf', () => {
  it('names what shows the thing that changed', () => {
    expect(topicsOf({ act: 'task.started', noun: 'task', id: '1' })).toEqual(
      expect.arrayContaining(['plan', 'job']),
    );
    expect(topicsOf({ act: 'part.driver.changed', noun: 'part.driver', id: '1' })).toContain('part');
    expect(topicsOf({ act: 'vehicle model.changed', noun: 'vehicle model', id: '1' })).toContain(
      'vehicleModel',
    );
  });
  it('plans anew for an issued sheet, not for one that is being typed at', () => {
    expect(topicsOf({ act: 'sheet.issued', noun: 'sheet.plan', id: '1' })).toContain('plan');
    expect(topicsOf({ act: 'sheet.saved', noun: 'sheet.plan', id: '1' })).not.toContain('plan');
  });
  it('is everything for a noun it does not know', () => {
    expect(topicsOf({ act: 'lamp.lit', noun: 'lamp', id: '1' })).toBeNull();
  });
});

describe('readNews', () => {
  it('takes what the API says, and nothing else', () => {
    const news = { act: 'task.started', noun: 'task', id: '1' };
    expect(readNews(JSON.stringify(news))).toEqual(news);
    for (const other of ['', 'null', '7', '{"act":1}', 'word', undefined]) expect(readNews(other)).toBeNull();
  });
});

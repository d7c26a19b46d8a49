import { expect, test } from 'vitest';
import { surveyOf } from '../../../core/survey/survey.ts';
import { typedPlace } from '../../../renderer/panels/find/typedPlace.ts';
import { drawing, origin } from '../../support/drawings.ts';

test.each(['-43.5, 172.5', '-43,5; 172,5', '-43.5; 172.5', 'geo:-43.5,172.5', 'geo:-43.5,172.5;u=3?z=18'])(
  '%s: both figures of a typed place are read, whatever parts them',
  (text) => {
    const project = drawing();
    expect(typedPlace(text, project, surveyOf(project))).toEqual({ lonLat: origin });
  },
);

test('a place far from the property is refused, not looked up there', () => {
  const project = drawing();
  expect(typedPlace('43.5, 172.5', project, surveyOf(project))).toEqual({
    problem: expect.stringMatching(/km from this property/),
  });
});

import { leftThing } from '../../locate/buriedThings.ts';
import { leavesOpen } from '../../locate/certainty.ts';
import type { CrossingAsBuilt } from '../../locate/crossingAsBuilt.ts';
import { depthInWords } from '../../locate/depthWords.ts';
import { type LeftInGround, leftInGround } from '../../locate/inGround/leftInGround.ts';
import { leftWithinM } from '../../locate/inGround/leftWithin.ts';
import { fateInShort, leftHeading } from '../../locate/inGround/leftWords.ts';
import { stakeOut } from '../../locate/stakeOut.ts';
import { fixedPosts } from '../../locate/tieFrom.ts';
import { dateText } from '../../words/dates.ts';
import { figures, plainWords } from '../../words/figures.ts';
import { formatTape } from '../../words/numbers/write.ts';
import { counted } from '../../words/text.ts';
import { stakeOutPages } from '../find/stakeOutPages.ts';
import type { Table } from '../flow/table.ts';
import { textPages } from '../flow/textPages.ts';
import type { PageDraft } from '../pageDraft.ts';
import { placeText } from '../placeText.ts';
import { listed, paragraph, uprightWidthMm } from './packBlocks.ts';
import type { PackInput } from './packInput.ts';

/** What is or was in the ground and is drawn no longer: a list, and a sheet to find each crossing by; none: no pages. */
export function leftPages(input: PackInput): PageDraft[] {
  const { project, survey, measure } = input;
  const all = leftInGround(project, survey);
  if (all.length === 0) return [];
  const widthMm = uprightWidthMm(input);
  const blocks = [
    paragraph(
      'These cables and stakes are drawn no longer. What may be live is taken for live; what is dead still lies there for the next digger.',
      widthMm,
      measure,
      'bold',
    ),
    ...listed('In the ground, no longer drawn', tableOf(all, input), '', widthMm, measure),
  ];
  const posts = fixedPosts(project, survey);
  const sheets = all.flatMap(({ thing, crossing }) =>
    crossing && thing.fate !== 'takenOut'
      ? stakeOutPages({ stake: stakeOut(crossing, posts), left: thing }, survey, input)
      : [],
  );
  return [...textPages('In the ground, no longer drawn', blocks, 'portrait', input), ...sheets];
}

/** Where the tapes leave it open no one distance tells where it lies. */
function crossingPlace({ certainty: { basis } }: CrossingAsBuilt, within: string): string {
  const words = plainWords().locate.basis[basis];
  return leavesOpen(basis) ? `${words}: see its own sheet` : `${within}, ${words}; its own sheet follows`;
}

function tableOf(all: readonly LeftInGround[], { project, survey, property }: PackInput): Table {
  const { units, placed } = property;
  const f = figures(units);
  const photosOf = (id: string) => [...project.photo.values()].filter(({ of }) => of?.id === id).length;
  return {
    columns: [
      { title: 'What', strong: true },
      { title: 'State' },
      { title: 'Drawn until' },
      { title: 'Where' },
      { title: 'Depth' },
      { title: 'Note' },
    ],
    rows: all.map((left) => {
      const { thing, path, crossing } = left;
      const { depth } = leftThing(left);
      const within = `within ${formatTape(leftWithinM(left), units)}`;
      const ends = [path[0], path.length > 1 ? path.at(-1) : undefined].flatMap((xy) => (xy ? [xy] : []));
      const places = placed ? ends.map((xy) => placeText(survey.plane.toLonLat(xy))) : [];
      const photos = photosOf(thing.id);
      return [
        leftHeading(thing),
        f.say(fateInShort(thing)),
        thing.since === null ? '-' : dateText(thing.since),
        [...places, crossing ? crossingPlace(crossing, within) : `${within} of where it was drawn, not measured`].join(
          '\n',
        ),
        depth ? f.say(depthInWords(depth)) : 'not known',
        [thing.note, photos > 0 ? `${counted(photos, 'photo')} in the file` : '']
          .filter((part) => part !== '')
          .join('\n') || '-',
      ];
    }),
  };
}

import { leftThing } from '../../locate/buriedThings.ts';
import { leavesOpen } from '../../locate/certainty.ts';
import type { CrossingAsBuilt } from '../../locate/crossingAsBuilt.ts';
import { depthInWords } from '../../locate/depthWords.ts';
import { type LeftInGround, leftInGround } from '../../locate/inGround/leftInGround.ts';
import { leftWithinM } from '../../locate/inGround/leftWithin.ts';
import { fateInShort, leftHeading } from '../../locate/inGround/leftWords.ts';
import { stakeOut } from '../../locate/stakeOut.ts';
import { fixedPosts } from '../../locate/tieFrom.ts';
import type { Figures } from '../../words/types.ts';
import { stakeOutPages } from '../find/stakeOutPages.ts';
import type { Table } from '../flow/table.ts';
import { textPages } from '../flow/textPages.ts';
import type { PageDraft } from '../pageDraft.ts';
import { placeText } from '../placeText.ts';
import { listed, paragraph, uprightWidthMm } from './packBlocks.ts';
import type { PackInput } from './packInput.ts';

/** What is or was in the ground and is drawn no longer: a list, and a sheet to find each crossing by; none: no pages. */
export function leftPages(input: PackInput): PageDraft[] {
  const { project, survey, f, measure } = input;
  const said = f.words.sheets.left;
  const all = leftInGround(project, survey);
  if (all.length === 0) return [];
  const widthMm = uprightWidthMm(input);
  const blocks = [
    paragraph(said.intro, widthMm, measure, 'bold'),
    ...listed(said.title, tableOf(all, input), '', widthMm, measure),
  ];
  const posts = fixedPosts(project, survey);
  const sheets = all.flatMap(({ thing, crossing }) =>
    crossing && thing.fate !== 'takenOut'
      ? stakeOutPages({ stake: stakeOut(crossing, posts), left: thing }, survey, input)
      : [],
  );
  return [...textPages(said.title, blocks, 'portrait', input), ...sheets];
}

/** Where the tapes leave it open no one distance tells where it lies. */
function crossingPlace({ certainty: { basis } }: CrossingAsBuilt, within: string, f: Figures): string {
  const said = f.words.sheets.left;
  const words = f.words.locate.basis[basis];
  return leavesOpen(basis) ? said.seeSheet({ basis: words }) : said.within({ within, basis: words });
}

function tableOf(all: readonly LeftInGround[], { project, survey, property, f }: PackInput): Table {
  const { placed } = property;
  const { left: said, heads, cells } = f.words.sheets;
  const photosOf = (id: string) => [...project.photo.values()].filter(({ of }) => of?.id === id).length;
  return {
    columns: [
      { title: heads.what, strong: true },
      { title: heads.state },
      { title: said.drawnUntil },
      { title: said.where },
      { title: said.depth },
      { title: heads.note },
    ],
    rows: all.map((left) => {
      const { thing, path, crossing } = left;
      const { depth } = leftThing(left);
      const within = f.tape(leftWithinM(left));
      const ends = [path[0], path.length > 1 ? path.at(-1) : undefined].flatMap((xy) => (xy ? [xy] : []));
      const places = placed ? ends.map((xy) => placeText(survey.plane.toLonLat(xy))) : [];
      const photos = photosOf(thing.id);
      return [
        leftHeading(thing),
        f.say(fateInShort(thing)),
        thing.since === null ? '-' : f.date(thing.since),
        [...places, crossing ? crossingPlace(crossing, within, f) : said.asDrawn({ within })].join('\n'),
        depth ? f.say(depthInWords(depth)) : cells.notKnown,
        [thing.note, photos > 0 ? said.photos({ count: photos }) : ''].filter((part) => part !== '').join('\n') || '-',
      ];
    }),
  };
}

import fieldCourse from '../../../examples/field-course/setup.yaml';
import homeAndAway from '../../../examples/home-and-away/setup.yaml';
import mountainHunt from '../../../examples/mountain-hunt/setup.yaml';
import whichBuild from '../../../examples/which-build/setup.yaml';

/** The examples of the project, to look around with. Every number of them is invented. */
export const EXAMPLES = [
  { name: 'mountain-hunt.yaml', text: mountainHunt },
  { name: 'field-course.yaml', text: fieldCourse },
  { name: 'which-build.yaml', text: whichBuild },
  { name: 'home-and-away.yaml', text: homeAndAway },
] as const;

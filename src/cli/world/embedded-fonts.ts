/** The typeface, which the build puts into the program: a document needs no file beside it. */
export { default as font } from '../../documents/fonts/sans-condensed.ttf';
export { default as boldFont } from '../../documents/fonts/sans-condensed-bold.ttf';

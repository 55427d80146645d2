import { drawingStyles } from './styles-drawing.ts';
import { figureStyles } from './styles-figure.ts';

/** The charts of the quote in the book's inks, told apart by form, so that they need no colour. */
export const quoteChartStyles: string = drawingStyles + figureStyles;

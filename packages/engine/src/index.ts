export * from './quantity/index.ts';
export * from './tariff/index.ts';
export * from './readings/index.ts';
export * from './energy/index.ts';
export * from './settlement/index.ts';
export * from './bill/index.ts';
export * from './savings/index.ts';
export { keepBook, type Book, type BookInput, type BookMonth } from './book.ts';
export { bookDocument, type BookDocument, type FigureDocument } from './book-document.ts';

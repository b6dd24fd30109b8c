export { SaxesParser } from 'saxes';

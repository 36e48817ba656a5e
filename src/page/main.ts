import { startPage } from './screen/page.ts';

const place = document.getElementById('page');
if (place !== null) void startPage(place);

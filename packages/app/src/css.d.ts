/** Style sheets are taken into the page by the bundler. */
declare module '*.css';

// Package web is the page in the browser. Its sources are in page, what is served is in
// static, which tools/bundle makes of them; docs/frontend.md says how.
package web

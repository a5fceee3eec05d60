/** What every request passes: roles, same-origin check, headers, errors, limits. Knows no page's content. */
package groundbass.web.shell;

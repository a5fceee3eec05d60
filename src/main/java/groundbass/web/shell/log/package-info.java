/** What the log says of requests that failed or were refused. Knows no page and no session. */
package groundbass.web.shell.log;

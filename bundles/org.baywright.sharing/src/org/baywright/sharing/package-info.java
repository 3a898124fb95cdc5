/**
 * How technicians share a project without knowing how it is kept: each has a copy of it, offers what was changed there, looks at what
 * others offer, and takes it over. Beneath is a Git repository with plain commits and branches; the shared place is another, bare one.
 *
 * <p>{@link org.baywright.sharing.SharedProject} is the way in. What goes wrong is told by {@link org.baywright.sharing.SharingException}
 * in one sentence that says what to do.
 */
package org.baywright.sharing;

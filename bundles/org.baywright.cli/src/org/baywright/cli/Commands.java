package org.baywright.cli;

import picocli.CommandLine;
import picocli.CommandLine.IFactory;

/** Makes the commands and gives them the session. */
final class Commands implements IFactory {

	private final Session session;

	Commands(Session session) {
		this.session = session;
	}

	@Override
	public <K> K create(Class<K> type) throws Exception {
		try {
			return type.getDeclaredConstructor(Session.class).newInstance(session);
		} catch (NoSuchMethodException e) {
			return CommandLine.defaultFactory().create(type);
		}
	}
}

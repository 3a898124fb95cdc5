package org.baywright.sharing;

import java.io.IOException;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.CancellationException;
import java.util.stream.Stream;

import org.eclipse.jgit.lib.Constants;
import org.eclipse.jgit.lib.ObjectId;
import org.eclipse.jgit.lib.ProgressMonitor;
import org.eclipse.jgit.lib.Ref;
import org.eclipse.jgit.lib.Repository;
import org.eclipse.jgit.transport.FetchConnection;
import org.eclipse.jgit.transport.PushResult;
import org.eclipse.jgit.transport.RefSpec;
import org.eclipse.jgit.transport.RemoteConfig;
import org.eclipse.jgit.transport.RemoteRefUpdate;
import org.eclipse.jgit.transport.Transport;
import org.eclipse.jgit.transport.URIish;

/** The shared place, as a copy knows it. */
final class Place {

	/** So long is waited for a place that does not answer, in seconds. */
	private static final int PATIENCE = 30;

	private final Repository repository;
	private final String remote;
	private final String address;

	private Place(Repository repository, String remote, String address) {
		this.repository = repository;
		this.remote = remote;
		this.address = address;
	}

	/** Returns the place that a copy is shared at. */
	static Place of(Repository repository) throws SharingException {
		String set = repository.getConfig().getString(Names.SECTION, null, "remote");
		String remote = set == null ? Constants.DEFAULT_REMOTE_NAME : set;
		String address = repository.getConfig().getString("remote", remote, "url");
		if (address == null) {
			throw new SharingException(repository.getWorkTree() + " is not shared yet. Share it first.");
		}
		return new Place(repository, remote, address);
	}

	/** Notes in the settings of a copy where it is shared. */
	static Place connect(Repository repository, String address, String branch) throws IOException, SharingException {
		String used = repository.getConfig().getString("remote", Constants.DEFAULT_REMOTE_NAME, "url");
		String remote = used == null || used.equals(address) ? Constants.DEFAULT_REMOTE_NAME : "shared";
		try {
			RemoteConfig config = new RemoteConfig(repository.getConfig(), remote);
			List.copyOf(config.getURIs()).forEach(config::removeURI);
			config.addURI(new URIish(address));
			config.setFetchRefSpecs(List.of(new RefSpec("+refs/heads/*:refs/remotes/" + remote + "/*")));
			config.update(repository.getConfig());
		} catch (URISyntaxException e) {
			throw new SharingException(address + " is no place that can be reached. Name a folder, or an address that begins with https:// or file://.", e);
		}
		repository.getConfig().setString("branch", branch, "remote", remote);
		repository.getConfig().setString("branch", branch, "merge", Constants.R_HEADS + branch);
		repository.getConfig().setString(Names.SECTION, null, "remote", remote);
		repository.getConfig().setString(Names.SECTION, null, "branch", branch);
		repository.getConfig().save();
		return new Place(repository, remote, address);
	}

	String address() {
		return address;
	}

	/** Returns the name under which the copy keeps where a branch of the place was last. */
	String known(String branch) {
		return Constants.R_REMOTES + remote + "/" + branch;
	}

	/** Returns the branches of the place that begin with some letters, as far as the copy knows, without these letters. */
	Map<String, ObjectId> known() throws IOException {
		Map<String, ObjectId> branches = new TreeMap<>();
		for (Ref ref : repository.getRefDatabase().getRefsByPrefix(known(""))) {
			if (!ref.isSymbolic()) {
				branches.put(ref.getName().substring(known("").length()), ref.getObjectId());
			}
		}
		return branches;
	}

	/** Returns the branch that all share there; nothing if nothing is shared yet. */
	Optional<String> mainBranch(SharingListener listener) throws SharingException {
		return at(listener, () -> {
			try (Transport transport = open(); FetchConnection there = transport.openFetch()) {
				Ref head = there.getRef(Constants.HEAD);
				if (head != null && head.isSymbolic()) {
					return Optional.of(Repository.shortenRefName(head.getTarget().getName()));
				}
				List<String> names = there.getRefs().stream().map(Ref::getName).filter(name -> name.startsWith(Constants.R_HEADS))
						.map(Repository::shortenRefName).toList();
				return names.contains("main") ? Optional.of("main") : names.contains("master") ? Optional.of("master") : names.stream().findFirst();
			}
		});
	}

	/** Brings everything here that is there, and forgets what is no longer there. */
	void fetch(SharingListener listener) throws SharingException {
		listener.doing("Asking the shared place");
		at(listener, () -> {
			try (Transport transport = open()) {
				transport.setRemoveDeletedRefs(true);
				transport.fetch(monitor(listener), List.of(new RefSpec("+refs/heads/*:" + known("*"))));
				return null;
			}
		});
	}

	/**
	 * A branch of the place that shall lead elsewhere.
	 *
	 * @param branch its name
	 * @param from where it must lead until now; the zero id if it must not be there
	 * @param to where it shall lead; the zero id takes it away
	 */
	record Move(String branch, ObjectId from, ObjectId to) {
	}

	/**
	 * Moves branches of the place.
	 *
	 * @return false if somebody else was faster; nothing has changed then, as far as it is one branch
	 */
	boolean push(SharingListener listener, Move... moves) throws SharingException {
		listener.doing("Writing to the shared place");
		return at(listener, () -> {
			List<RemoteRefUpdate> updates = new ArrayList<>();
			for (Move move : moves) {
				updates.add(new RemoteRefUpdate(repository, move.to().name(), move.to(), Constants.R_HEADS + move.branch(), true, known(move.branch()), move.from()));
			}
			try (Transport transport = open()) {
				PushResult result = transport.push(monitor(listener), updates);
				boolean all = true;
				for (RemoteRefUpdate update : result.getRemoteUpdates()) {
					all &= isDone(update);
				}
				return all;
			}
		});
	}

	private boolean isDone(RemoteRefUpdate update) throws SharingException, IOException {
		String said = String.valueOf(update.getMessage());
		return switch (update.getStatus()) {
		case OK, UP_TO_DATE -> true;
		case REJECTED_REMOTE_CHANGED, REJECTED_NONFASTFORWARD, NON_EXISTING -> false;
		case REJECTED_OTHER_REASON -> {
			if (said.contains("lock")) {
				yield false;
			}
			throw new IOException(said);
		}
		case REJECTED_NODELETE -> throw new SharingException(address + " lets nobody take anything away. Ask whoever looks after it.");
		default -> throw new IOException("it was not taken: " + said);
		};
	}

	private Transport open() throws IOException, SharingException {
		Path folder = folder(address);
		if (folder != null && !Files.isDirectory(folder)) {
			throw new SharingException("The shared place " + address + " is not there. See that the drive is connected and that its name is right.");
		}
		try {
			Transport transport = Transport.open(repository, remote);
			transport.setTimeout(PATIENCE);
			return transport;
		} catch (URISyntaxException e) {
			throw new IOException(e);
		}
	}

	/** Returns the folder that an address names; null if it names something else. */
	static Path folder(String address) {
		return address.contains("://") || address.matches("[^/\\\\]{2,}:.*") ? null : Path.of(address);
	}

	/** Returns a file that keeps others from writing to a branch of the place; nothing if there is none, or it is no folder. */
	Optional<Path> locked() throws SharingException {
		Path folder = folder(address);
		if (folder == null) {
			return Optional.empty();
		}
		return Failures.told(address, () -> {
			try (Stream<Path> refs = Files.walk(folder.resolve(Constants.R_HEADS))) {
				return refs.filter(path -> path.toString().endsWith(".lock")).sorted().findFirst();
			}
		});
	}

	private <T> T at(SharingListener listener, Failures.Work<T> work) throws SharingException {
		if (listener.isCancelled()) {
			throw new CancellationException();
		}
		try {
			return Failures.told(address, work);
		} catch (SharingException e) {
			if (listener.isCancelled()) {
				throw new CancellationException();
			}
			throw e;
		}
	}

	private static ProgressMonitor monitor(SharingListener listener) {
		return new ProgressMonitor() {
			@Override
			public void start(int totalTasks) {
				// only what is done is told
			}

			@Override
			public void beginTask(String title, int totalWork) {
				// the words are Git's
			}

			@Override
			public void update(int completed) {
				// only what is done is told
			}

			@Override
			public void endTask() {
				// only what is done is told
			}

			@Override
			public boolean isCancelled() {
				return listener.isCancelled();
			}

			@Override
			public void showDuration(boolean enabled) {
				// only what is done is told
			}
		};
	}
}

package org.baywright.cli.work;

import java.io.BufferedOutputStream;
import java.io.FileDescriptor;
import java.io.FileInputStream;
import java.io.FileOutputStream;
import java.util.function.BooleanSupplier;

import org.baywright.language.ide.server.ServerProcess;

/** Serves an editor. */
public final class Serving {

	private Serving() {
	}

	/**
	 * Serves over the streams of this process. Standard output belongs to the protocol; whatever else wants to print there
	 * prints to standard error.
	 *
	 * @param version the program's version, for the editor to show
	 * @param cancelled becomes true when the process shall end
	 * @return the exit code of the process
	 */
	@SuppressWarnings("resource") // the streams of the process stay open until it ends
	public static int overStandardStreams(String version, BooleanSupplier cancelled) throws InterruptedException {
		System.setOut(System.err);
		return ServerProcess.serve(new FileInputStream(FileDescriptor.in),
				new BufferedOutputStream(new FileOutputStream(FileDescriptor.out)), version, cancelled);
	}
}

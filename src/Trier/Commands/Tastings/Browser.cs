using System.ComponentModel;
using System.Diagnostics;

namespace Trier.Commands.Tastings;

/// <summary>Opens a page in the person's browser, where there is one.</summary>
internal static class Browser
{
    public static void Open(string address)
    {
        if (OperatingSystem.IsLinux() && string.IsNullOrEmpty(Environment.GetEnvironmentVariable("DISPLAY")) && string.IsNullOrEmpty(Environment.GetEnvironmentVariable("WAYLAND_DISPLAY"))) return;
        try
        {
            using var opened = Process.Start(new ProcessStartInfo(address) { UseShellExecute = true });
        }
        catch (Win32Exception)
        {
            // No browser on this machine: the link stands printed above.
        }
    }
}
